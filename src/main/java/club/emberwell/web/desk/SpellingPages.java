package club.emberwell.web.desk;

import club.emberwell.desk.supplier.LikelySpellings;
import club.emberwell.desk.supplier.SupplierSpelling;
import club.emberwell.desk.supplier.SupplierSpellings;
import club.emberwell.desk.supplier.SupplierSpellings.Draft;
import club.emberwell.listing.Part;
import club.emberwell.lot.LotLimits;
import club.emberwell.member.Role;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Field;
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
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Which names of suppliers mean one: joining them, and parting them again. */
@Path("/desk/suppliers")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class SpellingPages extends Pages {
  private static final String PATH = "/desk/suppliers";

  private final SupplierSpellings spellings;
  private final LikelySpellings likely;

  SpellingPages(SupplierSpellings spellings, LikelySpellings likely) {
    this.spellings = spellings;
    this.likely = likely;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance spellings(Listing<SupplierSpelling> list, List<Offer> likely);

    static native TemplateInstance join(Form form, List<Offer> likely);

    static native TemplateInstance spelling(SupplierSpelling joined, Form form);
  }

  /**
   * Two names that may mean one.
   *
   * @param href of the form, filled with them
   */
  record Offer(String spelling, String supplier, String href) {
    static Offer of(LikelySpellings.Pair pair) {
      return new Offer(
          pair.spelling(),
          pair.supplier(),
          "%s/join?spelling=%s&supplier=%s"
              .formatted(
                  PATH,
                  QueryString.encoded(pair.spelling()),
                  QueryString.encoded(pair.supplier())));
    }
  }

  @GET
  public TemplateInstance spellings(@RestQuery Integer page) {
    return Templates.spellings(
        Listing.of(
            "Suppliers’ names",
            "No names are joined yet.",
            spellings.joined(actor(), Part.page(page)),
            PATH),
        offers(likely.pairs(actor())));
  }

  private static List<Offer> offers(List<LikelySpellings.Pair> pairs) {
    return pairs.stream().map(Offer::of).toList();
  }

  @GET
  @Path("join")
  public TemplateInstance join(@RestQuery String spelling, @RestQuery String supplier) {
    Form form = joining();
    form.field("spelling").value(spelling);
    form.field("supplier").value(supplier);
    return shown(form);
  }

  private TemplateInstance shown(Form form) {
    String name = form.field("spelling").getValue();
    boolean known = name != null && !name.isBlank() && name.length() <= LotLimits.WORDS;
    return Templates.join(form, offers(known ? likely.of(actor(), name) : List.of()));
  }

  private static Form joining() {
    return new Form()
        .add(
            Field.of("spelling", "This name")
                .hint("It will count as the other one. Lots keep what their owners typed.")
                .maxLength(LotLimits.WORDS)
                .required())
        .add(
            Field.of("supplier", "is another spelling of")
                .hint("The name to keep.")
                .maxLength(LotLimits.WORDS)
                .required())
        .add(DeskForms.reason("The log records it."));
  }

  @POST
  @Path("join")
  public Response join(SentForm sent) {
    return take(sent, SpellingPages::joining, this::shown)
        .run(
            s ->
                spellings.join(
                    actor(),
                    new Draft(s.typed("spelling"), s.typed("supplier"), s.typed("reason"))))
        .then(PATH + "?done=yes");
  }

  @GET
  @Path("{code}")
  public TemplateInstance spelling(@RestPath String code) {
    return Templates.spelling(spellings.one(actor(), code), parting());
  }

  private static Form parting() {
    return DeskForms.because("The log records it.");
  }

  @POST
  @Path("{code}/part")
  public Response part(@RestPath String code, SentForm sent) {
    return take(
            sent,
            SpellingPages::parting,
            form -> Templates.spelling(spellings.one(actor(), code), form))
        .run(s -> spellings.part(actor(), code, s.typed("reason")))
        .then(PATH + "?done=yes");
  }
}
