package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.catalog.Unfiled;
import club.emberwell.desk.Action;
import club.emberwell.desk.CautionProposal;
import club.emberwell.desk.Decision;
import club.emberwell.desk.Decisions;
import club.emberwell.desk.Desk;
import club.emberwell.desk.DeskHome;
import club.emberwell.desk.Flag;
import club.emberwell.desk.Flags;
import club.emberwell.desk.Item;
import club.emberwell.desk.ItemRef;
import club.emberwell.desk.RuleNote;
import club.emberwell.desk.Rules;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
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
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The first screen, its lists, and deciding about one item. */
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class DeskPages {
  private final Desk desk;
  private final Decisions decisions;
  private final Flags flags;
  private final Rules rules;
  private final ItemContents contents;
  private final CurrentActor current;
  private final DeskForms forms;

  DeskPages(
      Desk desk,
      Decisions decisions,
      Flags flags,
      Rules rules,
      ItemContents contents,
      CurrentActor current,
      DeskForms forms) {
    this.desk = desk;
    this.decisions = decisions;
    this.flags = flags;
    this.rules = rules;
    this.contents = contents;
    this.current = current;
    this.forms = forms;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance home(Home home);

    static native TemplateInstance items(Listing<ItemRow> list);

    static native TemplateInstance item(ItemPage page);
  }

  /** The first screen: how much waits where, and the head of each list. */
  record Home(
      String age,
      boolean late,
      List<Tile> tiles,
      List<ItemRow> waiting,
      List<ItemRow> flagged,
      List<ItemRow> notes,
      List<Unfiled> words,
      List<CautionProposal> proposals) {}

  /** A list and how long it is. */
  record Tile(String href, String label, String count) {}

  /**
   * One item with everything said about it.
   *
   * @param decide null where nothing can be decided
   */
  record ItemPage(
      Item item,
      String state,
      ItemContent content,
      boolean own,
      List<Decision> decisions,
      List<Flag> flags,
      List<RuleNote> notes,
      Form decide,
      Form settle) {}

  @GET
  public TemplateInstance home() {
    DeskHome home = desk.home(current.get());
    return Templates.home(
        new Home(
            home.age(),
            home.late(),
            tiles(home.counts()),
            home.waiting().stream().map(ItemRow::of).toList(),
            home.flagged().stream().map(ItemRow::of).toList(),
            home.notes().stream().map(ItemRow::of).toList(),
            home.words(),
            home.proposals()));
  }

  private static List<Tile> tiles(DeskHome.Counts counts) {
    return List.of(
        tile("/desk/waiting", "waiting for a first look", counts.waiting()),
        tile("/desk/flags", "flagged by members", counts.flagged()),
        tile("/desk/notes", "noticed by rules", counts.notes()),
        tile("/desk/words", "words to file", counts.words()),
        tile("/desk/cautions", "caution texts to look at", counts.proposals()),
        tile("/desk/cautions#removals", "removals to confirm", counts.removals()),
        tile("/desk/requests", "asking to come in", counts.joins()));
  }

  private static Tile tile(String href, String label, int count) {
    return new Tile(href, label, DeskHome.Counts.said(count));
  }

  @GET
  @Path("waiting")
  public TemplateInstance waiting(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Waiting for a first look",
            "Nothing waits.",
            desk.waiting(current.get(), page).map(ItemRow::of),
            "/desk/waiting"));
  }

  @GET
  @Path("flags")
  public TemplateInstance flags(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Flagged by members",
            "No flag is open.",
            flags.open(current.get(), page).map(ItemRow::of),
            "/desk/flags"));
  }

  @GET
  @Path("notes")
  public TemplateInstance notes(@RestQuery Integer page) {
    return Templates.items(
        Listing.of(
            "Noticed by rules",
            "No note is open.",
            rules.open(current.get(), page).map(ItemRow::of),
            "/desk/notes"));
  }

  @POST
  @Path("notes/{id}/seen")
  public Response seen(@RestPath long id, @RestForm String to) {
    rules.seen(current.get(), id);
    return Response.seeOther(LocalPath.of(to, "/desk/notes")).build();
  }

  @GET
  @Path("items/{kind}/{id}")
  public TemplateInstance item(@RestPath String kind, @RestPath UUID id) {
    Item item = decisions.item(current.get(), ItemRef.of(kind, id));
    return page(
        item,
        DeskForms.decision(item.state(), "", ""),
        DeskForms.settling(item.state(), "", "", ""));
  }

  private TemplateInstance page(Item item, Form decide, Form settle) {
    Actor actor = current.get();
    return Templates.item(
        new ItemPage(
            item,
            item.state().toLowerCase(Locale.ROOT),
            contents.of(actor, item),
            actor.is(item.author()),
            decisions.about(actor, item.ref()),
            flags.on(actor, item.ref()),
            rules.on(actor, item.ref()),
            Action.from(item.state()).isEmpty() ? null : decide,
            settle));
  }

  @POST
  @Path("items/{kind}/{id}/decide")
  public Response decide(
      @RestPath String kind, @RestPath UUID id, @RestForm String action, @RestForm String reason) {
    Item item = decisions.item(current.get(), ItemRef.of(kind, id));
    return forms.send(
        () -> decisions.decide(current.get(), item.ref(), Action.read("/action", action), reason),
        item.deskPath(),
        DeskForms.decision(item.state(), action, reason),
        form -> page(item, form, DeskForms.settling(item.state(), "", "", "")));
  }

  @POST
  @Path("items/{kind}/{id}/settle")
  public Response settle(
      @RestPath String kind,
      @RestPath UUID id,
      @RestForm String upheld,
      @RestForm("settle.action") String action,
      @RestForm("settle.reason") String reason) {
    Item item = decisions.item(current.get(), ItemRef.of(kind, id));
    boolean nothing = action == null || action.isEmpty();
    return forms.send(
        () ->
            DeskForms.under(
                "/settle",
                () ->
                    flags.settle(
                        current.get(),
                        item.ref(),
                        DeskForms.yes("/upheld", upheld),
                        nothing ? null : Action.read("/action", action),
                        reason)),
        item.deskPath(),
        DeskForms.settling(item.state(), upheld, action, reason),
        form -> page(item, DeskForms.decision(item.state(), "", ""), form));
  }
}
