package club.emberwell.web.lot;

import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.lot.Lot;
import club.emberwell.lot.LotPosting;
import club.emberwell.lot.Lots;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.Words;
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
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own deliveries of blanks. */
@Path("/lots")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class LotPages extends Pages {
  private static final String LIST = "/lots";
  private static final String PATH = LIST + "/";
  private static final String NEW = PATH + "new";

  /** Earlier lots beside the form. */
  private static final int BESIDE = 5;

  private final Lots lots;
  private final LotViews views;
  private final Words words;

  LotPages(Lots lots, LotViews views, Words words) {
    this.lots = lots;
    this.views = views;
    this.words = words;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance lots(List<LotCard> lots, Pager pager);

    static native TemplateInstance lot(LotViews.One one);

    static native TemplateInstance write(Writing writing);

    static native TemplateInstance withdraw(LotCard lot);
  }

  /**
   * The form in one state.
   *
   * @param action where it is sent to
   * @param back where Cancel leads
   */
  record Writing(String action, Form form, String back, Words.Lists words, Earlier earlier) {}

  /**
   * Lots that stand beside the form.
   *
   * @param supplier of all of them, null where they are the last received of any
   */
  record Earlier(String supplier, List<LotCard> lots) {}

  @GET
  public TemplateInstance lots(@RestQuery("page") String number, @RestQuery String done) {
    say(done, "removed".equals(done) ? "Removed." : "Saved.");
    Slice<Lot> found = lots.mine(actor(), Pager.part(number));
    return Templates.lots(views.cards(actor(), found.rows()), Pager.of(found, LIST));
  }

  @GET
  @Path("new")
  public TemplateInstance blank() {
    return shown(LotForm.of(UUID.randomUUID()));
  }

  private TemplateInstance shown(Form form) {
    return Templates.write(new Writing(NEW, form, LIST, words.lists(), last()));
  }

  @POST
  @Path("new")
  public Response add(SentForm sent) {
    return take(sent, () -> LotForm.of(UUID.randomUUID()), this::shown)
        .store(s -> lots.add(actor(), LotPosting.of(s.id("id"), LotForm.written(s))))
        .then(LIST + "?done=added");
  }

  @GET
  @Path("{id}")
  public TemplateInstance lot(@RestPath UUID id, @RestQuery String done) {
    say(done, "Saved.");
    return Templates.lot(views.one(actor(), lots.get(actor(), id)));
  }

  @GET
  @Path("{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return editing(id, stored(id));
  }

  private Form stored(UUID id) {
    Lot lot = lots.get(actor(), id);
    return LotForm.of(null)
        .changing("lot", lot.version(), PATH + id)
        .fill(LotForm.values(lot.written()));
  }

  private TemplateInstance editing(UUID id, Form form) {
    return Templates.write(
        new Writing(PATH + id + "/edit", form, PATH + id, words.lists(), sameSupplier(id)));
  }

  private Earlier last() {
    return new Earlier(null, cards(lots.mine(actor(), Part.FIRST).rows().stream()));
  }

  private Earlier sameSupplier(UUID id) {
    return new Earlier(
        lots.get(actor(), id).written().supplier(),
        cards(lots.ofSameSupplier(actor(), id).stream().filter(lot -> !lot.id().equals(id))));
  }

  private static List<LotCard> cards(Stream<Lot> lots) {
    return lots.limit(BESIDE).map(lot -> LotCard.of(lot, null)).toList();
  }

  @POST
  @Path("{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> stored(id), form -> editing(id, form))
        .store(s -> lots.revise(actor(), id, s.version(), LotForm.written(s)))
        .then(PATH + id + "?done=changed");
  }

  @GET
  @Path("{id}/withdraw")
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(LotCard.of(lots.get(actor(), id), null));
  }

  @POST
  @Path("{id}/withdraw")
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    lots.withdraw(actor(), id, version);
    return to(LIST + "?done=removed");
  }
}
