package club.emberwell.web.material;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Match;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.caution.CautionView;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.caution.TermLink;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.material.ReportCounts.Counts;
import club.emberwell.web.photo.Gallery;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Materials, coatings and colours, with what is known against working them. */
@Path("/materials")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class MaterialPages extends Pages {
  private static final int MOVED = 308;

  private final CatalogService catalog;
  private final ReportCounts counts;
  private final Gallery gallery;

  MaterialPages(CatalogService catalog, ReportCounts counts, Gallery gallery) {
    this.catalog = catalog;
    this.counts = counts;
    this.gallery = gallery;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance list(Listing list);

    static native TemplateInstance term(TermView view);

    static native TemplateInstance photos(Gallery.View gallery);
  }

  /**
   * The vocabulary, narrowed to a text.
   *
   * @param named the cautions of what the text names
   * @param near terms whose spelling is close, where nothing fits
   * @param general cautions that go with every work
   */
  record Listing(
      String text,
      CautionsView named,
      List<TermTree.Branch> materials,
      List<TermTree.Branch> coatings,
      List<TermTree.Branch> colours,
      List<TermLink> near,
      List<CautionView> general) {
    /** A narrowed list is unfolded. */
    public boolean open() {
      return !text.isEmpty();
    }

    public boolean nothing() {
      return materials.isEmpty() && coatings.isEmpty() && colours.isEmpty();
    }
  }

  @GET
  public TemplateInstance list(@RestQuery @DefaultValue("") String q) {
    String stripped = q.strip();
    String text =
        stripped.length() > CatalogLimits.TEXT
            ? stripped.substring(0, CatalogLimits.TEXT)
            : stripped;
    Actor actor = actor();
    Catalog now = catalog.snapshot();
    Counts reports = counts.all(actor);
    page.preview(
        Preview.of(
                "/materials",
                "Materials, coatings and colours for laser work, each with its cautions, their sources"
                    + " and what members tested. No caution does not mean it is safe.")
            .listedIf(text.isEmpty()));
    return Templates.list(
        new Listing(
            text,
            CautionsView.of(cautions(now, text), now.vocabulary(), actor.units()),
            TermTree.of(now, TermKind.MATERIAL, reports, text),
            TermTree.of(now, TermKind.COATING, reports, text),
            TermTree.of(now, TermKind.COLOUR, reports, text),
            text.isEmpty() ? List.of() : near(now, text),
            now.cautions().rules().stream()
                .filter(rule -> rule.scope().goesWithAll())
                .map(
                    rule ->
                        CautionView.of(
                            new Caution(rule, Optional.empty()), now.vocabulary(), actor.units()))
                .toList()));
  }

  /**
   * Of what a text names; where it names nothing that any list here holds, of what nobody knows.
   */
  private static List<Caution> cautions(Catalog now, String text) {
    List<Term> named = now.cautions().named(text);
    boolean unlisted =
        !text.isEmpty()
            && named.isEmpty()
            && Stream.of(TermKind.MATERIAL, TermKind.COATING, TermKind.COLOUR)
                .allMatch(kind -> TermTree.of(now, kind, Counts.NONE, text).isEmpty());
    return unlisted
        ? now.cautions().unlisted(text)
        : now.cautions().forTerms(named, List.of(), List.of());
  }

  private static List<TermLink> near(Catalog now, String text) {
    return TermLink.all(
        Stream.of(TermKind.MATERIAL, TermKind.COATING)
            .map(kind -> now.vocabulary().resolve(kind, text))
            .map(Match::candidates)
            .flatMap(List::stream)
            .toList());
  }

  @GET
  @Path("{slug}")
  public Response material(@RestPath String slug) {
    return term(TermKind.MATERIAL, slug);
  }

  /** How results on a material look. */
  @GET
  @Path("{slug}/photos")
  public Response photos(
      @RestPath String slug,
      @RestQuery String process,
      @RestQuery String source,
      @RestQuery("page") String number) {
    Term term =
        catalog
            .vocabulary()
            .successor(TermKind.MATERIAL, slug)
            .orElseThrow(() -> new EntryUnknown(TermKind.MATERIAL.code()));
    String path = TermLink.address(term) + "/photos";
    if (!term.slug().equals(slug)) {
      return Response.status(MOVED).location(URI.create(path)).build();
    }
    Gallery.View view =
        gallery.of(term, new Gallery.Wanted(process, source, Pager.part(number).page()), actor());
    page.preview(
        Preview.of(path, "Photos of laser results on " + term.label() + " by members.")
            .withPhoto(view.photos().isEmpty() ? null : view.photos().get(0).photo().largeSrc()));
    return Response.ok(Templates.photos(view)).build();
  }

  @GET
  @Path("coating/{slug}")
  public Response coating(@RestPath String slug) {
    return term(TermKind.COATING, slug);
  }

  private Response term(TermKind kind, String slug) {
    Catalog now = catalog.snapshot();
    Term term =
        now.vocabulary().successor(kind, slug).orElseThrow(() -> new EntryUnknown(kind.code()));
    if (!term.slug().equals(slug)) {
      return Response.status(MOVED).location(URI.create(TermLink.address(term))).build();
    }
    Actor actor = actor();
    int reports = counts.all(actor).of(kind, term.slug());
    TermView view = TermView.of(now, term, actor.units(), reports);
    page.preview(Preview.of(TermLink.address(term), view.getDescription()));
    return Response.ok(Templates.term(view)).build();
  }
}
