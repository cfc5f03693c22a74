package club.emberwell.web.desk;

import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.home.Desk;
import club.emberwell.desk.home.DeskHome;
import club.emberwell.desk.home.Judging;
import club.emberwell.desk.home.Tasks;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.rule.Rules;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import club.emberwell.hook.Webhooks;
import club.emberwell.keep.BackupOverview;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubBackups;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The first screen, its lists, and deciding about one item. */
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class DeskPages extends Pages {
  private final Desk desk;
  private final Tasks tasks;
  private final Judging judging;
  private final Verdicts verdicts;
  private final Flags flags;
  private final Rules rules;
  private final ItemContents contents;
  private final Webhooks hooks;
  private final ClubBackups backups;

  @SuppressWarnings("ParameterNumber") // what the first screen draws together
  DeskPages(
      Desk desk,
      Tasks tasks,
      Judging judging,
      Verdicts verdicts,
      Flags flags,
      Rules rules,
      ItemContents contents,
      Webhooks hooks,
      ClubBackups backups) {
    this.desk = desk;
    this.tasks = tasks;
    this.judging = judging;
    this.verdicts = verdicts;
    this.flags = flags;
    this.rules = rules;
    this.contents = contents;
    this.hooks = hooks;
    this.backups = backups;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance home(Home home);

    static native TemplateInstance items(Listing<ItemRow> list);

    static native TemplateInstance item(ItemPage page);
  }

  /**
   * The first screen: how much waits where, and what stands first.
   *
   * @param says how much waits and since when
   * @param late whether something waits longer than anything should
   * @param brokenHooks webhooks that were switched off by themselves; 0 for who cannot mend them
   * @param backups null for who cannot see to them
   */
  record Home(
      String says,
      boolean late,
      List<Tile> tiles,
      List<TaskRow> tasks,
      Orders orders,
      int brokenHooks,
      BackupNote backups) {}

  /**
   * How the club stands with backups.
   *
   * @param ago how long ago the newest was made; null where there is none
   * @param caution what to be warned of; null where all is well
   */
  record BackupNote(String ago, String caution) {
    static BackupNote of(BackupOverview backups, Instant now) {
      return new BackupNote(
          backups
              .newest()
              .map(one -> DeskHome.said(Duration.between(one.file().madeAt(), now)) + " ago")
              .orElse(null),
          backups.caution(now).orElse(null));
    }
  }

  /** Where to begin, and the same list the other way round. */
  record Orders(boolean oldestFirst, String first) {}

  /** A list and how long it is. */
  record Tile(String href, String label, String count) {}

  /**
   * One item with everything said about it.
   *
   * @param choices empty where nothing can be decided
   */
  record ItemPage(
      Entry item,
      String state,
      ItemContent content,
      boolean own,
      Said said,
      List<DeskForms.Choice> choices,
      Form decide,
      Turn turn) {}

  /** What was decided about an item, and what members and rules said of it. */
  record Said(List<Verdict> decisions, List<Flag> flags, List<RuleNote> notes) {
    /** Whether something is to be answered even where the item stays as it is. */
    boolean isOpen() {
      return !flags.isEmpty() || notes.stream().anyMatch(note -> note.state().equals("open"));
    }
  }

  @GET
  public TemplateInstance home(@RestQuery String by) {
    Actor actor = actor();
    DeskHome.Waiting waiting = desk.waiting(actor);
    boolean oldest = Tasks.OLDEST.equals(by);
    List<TaskRow> rows = TaskRow.of(tasks.first(actor, by), Tasks.order(by));
    return Templates.home(
        new Home(
            says(waiting, rows),
            waiting.late(),
            tiles(waiting.counts()),
            rows,
            new Orders(oldest, rows.isEmpty() ? null : rows.get(0).href()),
            hooks.broken(actor),
            backups
                .overviewFor(actor)
                .map(known -> BackupNote.of(known, Instant.now()))
                .orElse(null)));
  }

  /** "51 things wait: 32 notes, 19 new words. The oldest has been waiting for 3 days." */
  private static String says(DeskHome.Waiting waiting, List<TaskRow> yours) {
    List<String> parts = waiting.counts().inWords();
    if (parts.isEmpty()) {
      return "Nothing waits.";
    }
    String total = DeskHome.Counts.said(waiting.counts().total());
    String all =
        total.equals("1")
            ? "1 thing waits: " + parts.get(0) + "."
            : total + " things wait: " + String.join(", ", parts) + ".";
    String age = " The oldest has been waiting for " + waiting.age() + ".";
    return all + age + (yours.isEmpty() ? " Another moderator decides them." : "");
  }

  /** Leads to what waits next, to the first screen where that was the last. */
  @GET
  @Path("next")
  public Response next(@RestQuery String by, @RestQuery String after, @RestQuery String done) {
    String order = Tasks.order(by);
    String said = done == null ? "" : "&done=" + QueryString.encoded(done);
    return to(
        tasks
            .next(actor(), order, after)
            .map(task -> Turn.path(task, order) + said)
            .orElse("/desk?by=" + order + said));
  }

  private static List<Tile> tiles(DeskHome.Counts counts) {
    return List.of(
        tile("/desk/waiting", "waiting for approval", counts.waiting()),
        tile("/desk/flags", "flagged by members", counts.flagged()),
        tile("/desk/notes", "noticed by rules", counts.notes()),
        tile("/desk/words", "new words", counts.words()),
        tile("/desk/cautions", "proposed caution texts", counts.proposals()),
        tile("/desk/cautions#removals", "removals to confirm", counts.removals()),
        tile("/desk/requests", "requests to join", counts.joins()));
  }

  private static Tile tile(String href, String label, int count) {
    return new Tile(href, label, DeskHome.Counts.said(count));
  }

  @GET
  @Path("waiting")
  public TemplateInstance waiting(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Waiting for approval",
            "Nothing is waiting.",
            desk.waiting(actor(), Part.page(page)).map(ItemRow::of),
            "/desk/waiting"));
  }

  @GET
  @Path("flags")
  public TemplateInstance flags(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Flagged by members",
            "No open flags.",
            flags.open(actor(), Part.page(page)).map(ItemRow::of),
            "/desk/flags"));
  }

  @GET
  @Path("items/{kind}/{id}")
  public TemplateInstance item(
      @RestPath String kind, @RestPath UUID id, @RestQuery String by, @RestQuery String place) {
    Entry item = desk.item(actor(), EntryRef.of(kind, id));
    return page(item, new Turn(by, place), DeskForms.decision());
  }

  private TemplateInstance page(Entry item, Turn turn, Form decide) {
    Actor actor = actor();
    Said said =
        new Said(
            verdicts.about(actor, item.ref()),
            flags.on(actor, item.ref()),
            rules.on(actor, item.ref()));
    return Templates.item(
        new ItemPage(
            item,
            item.state().code(),
            contents.of(actor, item),
            actor.is(item.author().id()),
            said,
            DeskForms.choices(item.state(), !said.flags().isEmpty(), said.isOpen()),
            decide,
            turn));
  }

  @POST
  @Path("items/{kind}/{id}/decide")
  public Response decide(@RestPath String kind, @RestPath UUID id, SentForm sent) {
    Entry item = desk.item(actor(), EntryRef.of(kind, id));
    Turn turn = Turn.of(sent);
    return take(sent, DeskForms::decision, form -> page(item, turn, form))
        .run(
            s ->
                judging.decide(
                    actor(),
                    item.ref(),
                    DeskForms.decided(s.typed("action")),
                    DeskForms.upheld(s.typed("action")),
                    s.typed("reason")))
        .then(turn.done());
  }
}
