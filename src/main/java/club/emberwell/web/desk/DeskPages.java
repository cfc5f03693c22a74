package club.emberwell.web.desk;

import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.home.Desk;
import club.emberwell.desk.home.DeskHome;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.rule.Rules;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import club.emberwell.hook.Webhooks;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
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
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The first screen, its lists, and deciding about one item. */
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class DeskPages extends Pages {
  private final Desk desk;
  private final EntryLife life;
  private final Verdicts verdicts;
  private final Flags flags;
  private final Rules rules;
  private final ItemContents contents;
  private final Webhooks hooks;

  DeskPages(
      Desk desk,
      EntryLife life,
      Verdicts verdicts,
      Flags flags,
      Rules rules,
      ItemContents contents,
      Webhooks hooks) {
    this.desk = desk;
    this.life = life;
    this.verdicts = verdicts;
    this.flags = flags;
    this.rules = rules;
    this.contents = contents;
    this.hooks = hooks;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance home(Home home);

    static native TemplateInstance items(Listing<ItemRow> list);

    static native TemplateInstance item(ItemPage page);
  }

  /**
   * The first screen: how much waits where, and the head of each list.
   *
   * @param brokenHooks webhooks that were switched off by themselves; 0 for who cannot mend them
   */
  record Home(
      Oldest oldest,
      List<Tile> tiles,
      List<ItemRow> waiting,
      List<ItemRow> flagged,
      List<ItemRow> notes,
      List<Unfiled> words,
      List<CautionProposal> proposals,
      int brokenHooks) {}

  /**
   * How long the oldest item waits, or what to say where none does.
   *
   * @param age empty where none waits
   */
  record Oldest(String age, boolean late, String calm) {}

  /** A list and how long it is. */
  record Tile(String href, String label, String count) {}

  /**
   * One item with everything said about it.
   *
   * @param decide null where nothing can be decided
   */
  record ItemPage(
      Entry item,
      String state,
      ItemContent content,
      boolean own,
      Said said,
      Form decide,
      Form settle) {}

  /** What was decided about an item, and what members and rules said of it. */
  record Said(List<Verdict> decisions, List<Flag> flags, List<RuleNote> notes) {}

  @GET
  public TemplateInstance home() {
    DeskHome home = desk.home(actor());
    return Templates.home(
        new Home(
            new Oldest(home.age(), home.late(), calm(home.counts())),
            tiles(home.counts()),
            home.waiting().stream().map(ItemRow::of).toList(),
            home.flagged().stream().map(ItemRow::of).toList(),
            home.notes().stream().map(ItemRow::of).toList(),
            home.words(),
            home.proposals(),
            hooks.broken(actor())));
  }

  /** What there is where nothing waits for a decision. */
  private static String calm(DeskHome.Counts counts) {
    List<String> there = new ArrayList<>();
    if (counts.notes() > 0) {
      there.add(counted(counts.notes(), " note", " notes"));
    }
    if (counts.words() > 0) {
      there.add(counted(counts.words(), " new word", " new words"));
    }
    return there.isEmpty()
        ? "Nothing urgent."
        : "Nothing urgent. " + String.join(" and ", there) + ".";
  }

  private static String counted(int count, String one, String many) {
    return DeskHome.Counts.said(count) + (count == 1 ? one : many);
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
  @Path("notes")
  public TemplateInstance notes(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Noticed by rules",
            "No open notes.",
            rules.open(actor(), Part.page(page)).map(ItemRow::of),
            "/desk/notes"));
  }

  @POST
  @Path("notes/{id}/seen")
  public Response seen(@RestPath long id, @RestForm String to) {
    rules.seen(actor(), id);
    return to(LocalPath.of(to, "/desk/notes").toString());
  }

  @GET
  @Path("items/{kind}/{id}")
  public TemplateInstance item(@RestPath String kind, @RestPath UUID id) {
    Entry item = desk.item(actor(), EntryRef.of(kind, id));
    return page(item, DeskForms.decision(item.state()), DeskForms.settling(item.state()));
  }

  private TemplateInstance page(Entry item, Form decide, Form settle) {
    Actor actor = actor();
    return Templates.item(
        new ItemPage(
            item,
            item.state().code(),
            contents.of(actor, item),
            actor.is(item.author().id()),
            new Said(
                verdicts.about(actor, item.ref()),
                flags.on(actor, item.ref()),
                rules.on(actor, item.ref())),
            Decision.from(item.state()).isEmpty() ? null : decide,
            settle));
  }

  @POST
  @Path("items/{kind}/{id}/decide")
  public Response decide(@RestPath String kind, @RestPath UUID id, SentForm sent) {
    Entry item = desk.item(actor(), EntryRef.of(kind, id));
    return take(
            sent,
            () -> DeskForms.decision(item.state()),
            form -> page(item, form, DeskForms.settling(item.state())))
        .run(
            s ->
                life.decide(
                    actor(),
                    item.ref(),
                    Decision.read("/action", s.typed("action")),
                    s.typed("reason")))
        .then(item.deskPath());
  }

  @POST
  @Path("items/{kind}/{id}/settle")
  public Response settle(@RestPath String kind, @RestPath UUID id, SentForm sent) {
    Entry item = desk.item(actor(), EntryRef.of(kind, id));
    return take(
            sent,
            () -> DeskForms.settling(item.state()),
            form -> page(item, DeskForms.decision(item.state()), form))
        .run(
            s -> {
              String action = s.text("settle.action");
              flags.settle(
                  actor(),
                  item.ref(),
                  DeskForms.yes("/upheld", s.typed("upheld")),
                  action == null ? null : Decision.read("/action", action),
                  s.typed("settle.reason"));
            })
        .then(item.deskPath());
  }
}
