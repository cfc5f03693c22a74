package club.emberwell.web.desk;

import club.emberwell.api.access.CurrentActor;
import club.emberwell.catalog.Unfiled;
import club.emberwell.desk.Action;
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
  private final CurrentActor current;
  private final DeskForms forms;

  DeskPages(
      Desk desk,
      Decisions decisions,
      Flags flags,
      Rules rules,
      CurrentActor current,
      DeskForms forms) {
    this.desk = desk;
    this.decisions = decisions;
    this.flags = flags;
    this.rules = rules;
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

  /** The first screen; counts as text. */
  record Home(
      String age,
      boolean late,
      Counted waiting,
      Counted flagged,
      Counted notes,
      List<Unfiled> words,
      String wordCount,
      List<String> proposals,
      String proposalCount,
      String removalCount,
      String joinCount) {}

  /** The head of a list and its length. */
  record Counted(List<ItemRow> rows, String count) {}

  /** One item with everything said about it. */
  record ItemPage(
      Item item,
      boolean own,
      List<Decision> decisions,
      List<Flag> flags,
      List<RuleNote> notes,
      Form decide,
      Form settle) {}

  @GET
  public TemplateInstance home() {
    DeskHome home = desk.home(current.get());
    DeskHome.Counts counts = home.counts();
    return Templates.home(
        new Home(
            home.age(),
            home.late(),
            new Counted(home.waiting().stream().map(ItemRow::of).toList(), said(counts.waiting())),
            new Counted(home.flagged().stream().map(ItemRow::of).toList(), said(counts.flagged())),
            new Counted(home.notes().stream().map(ItemRow::of).toList(), said(counts.notes())),
            home.words(),
            said(counts.words()),
            home.proposals().stream().map(p -> p.rule().id() + ", by " + p.by()).toList(),
            said(counts.proposals()),
            said(counts.removals()),
            said(counts.joins())));
  }

  private static String said(int count) {
    return DeskHome.Counts.said(count);
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
    return page(ItemRef.of(kind, id), DeskForms.decision("", ""), DeskForms.settling("", "", ""));
  }

  private TemplateInstance page(ItemRef ref, Form decide, Form settle) {
    Actor actor = current.get();
    Item item = decisions.item(actor, ref);
    return Templates.item(
        new ItemPage(
            item,
            actor.is(item.author()),
            decisions.about(actor, ref),
            flags.on(actor, ref),
            rules.on(actor, ref),
            decide,
            settle));
  }

  @POST
  @Path("items/{kind}/{id}/decide")
  public Response decide(
      @RestPath String kind, @RestPath UUID id, @RestForm String action, @RestForm String reason) {
    ItemRef ref = ItemRef.of(kind, id);
    return forms.send(
        () -> decisions.decide(current.get(), ref, Action.read("/action", action), reason),
        "/desk/items/" + kind + "/" + id,
        DeskForms.decision(action, reason),
        form -> page(ref, form, DeskForms.settling("", "", "")));
  }

  @POST
  @Path("items/{kind}/{id}/settle")
  public Response settle(
      @RestPath String kind,
      @RestPath UUID id,
      @RestForm String upheld,
      @RestForm("settle.action") String action,
      @RestForm("settle.reason") String reason) {
    ItemRef ref = ItemRef.of(kind, id);
    boolean nothing = action == null || action.isEmpty();
    return forms.send(
        () ->
            DeskForms.under(
                "/settle",
                () ->
                    flags.settle(
                        current.get(),
                        ref,
                        DeskForms.yes("/upheld", upheld),
                        nothing ? null : Action.read("/action", action),
                        reason)),
        "/desk/items/" + kind + "/" + id,
        DeskForms.settling(upheld, action, reason),
        form -> page(ref, DeskForms.decision("", ""), form));
  }
}
