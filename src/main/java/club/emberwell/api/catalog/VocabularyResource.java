package club.emberwell.api.catalog;

import club.emberwell.access.Etags;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.HazardCard;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Materials, coatings, colours and defects with their synonyms and cautions. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.READ)
@Tag(name = "Vocabulary")
public class VocabularyResource {
  private final CatalogService catalog;
  private final RoutingContext request;

  VocabularyResource(CatalogService catalog, RoutingContext request) {
    this.catalog = catalog;
    this.request = request;
  }

  /** Every living term, parents before children; the version is that of the whole vocabulary. */
  @Schema(name = "Vocabulary")
  record VocabularyJson(long version, @JsonUnwrapped ListJson<TermJson> terms) {}

  @WithEtag
  @GET
  @Path("materials")
  @Operation(operationId = "listMaterials", summary = "All materials")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response materials() {
    return answer(TermKind.MATERIAL);
  }

  @WithEtag
  @GET
  @Path("coatings")
  @Operation(operationId = "listCoatings", summary = "All coatings")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response coatings() {
    return answer(TermKind.COATING);
  }

  @WithEtag
  @GET
  @Path("colours")
  @Operation(operationId = "listColours", summary = "All colour words")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response colours() {
    return answer(TermKind.COLOUR);
  }

  @WithEtag
  @GET
  @Path("defects")
  @Operation(operationId = "listDefects", summary = "All named defects")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response defects() {
    return answer(TermKind.DEFECT);
  }

  @WithEtag
  @GET
  @Path("materials/{value}/hazards")
  @Operation(
      operationId = "getMaterialHazards",
      summary = "The hazard card of a material",
      description =
          "What it gives off, who says so and where that applies, which extraction it takes and"
              + " what not to do. No caution does not mean it is safe.")
  @APIResponseSchema(value = HazardCardJson.class, responseCode = "200")
  public Response materialHazards(@RestPath String value) {
    return card(TermKind.MATERIAL, value);
  }

  @WithEtag
  @GET
  @Path("coatings/{value}/hazards")
  @Operation(operationId = "getCoatingHazards", summary = "The hazard card of a coating")
  @APIResponseSchema(value = HazardCardJson.class, responseCode = "200")
  public Response coatingHazards(@RestPath String value) {
    return card(TermKind.COATING, value);
  }

  /** A term that was merged into another has that one's card. */
  private Response card(TermKind kind, String value) {
    Catalog now = catalog.snapshot();
    Term term =
        now.vocabulary().successor(kind, value).orElseThrow(() -> new EntryUnknown(kind.code()));
    String tag = Etags.strong(kind.code() + "-" + term.slug() + "-" + now.version());
    if (Etags.held(request, tag)) {
      return Response.notModified().header(HttpHeaders.ETAG, tag).build();
    }
    return Response.ok(HazardCardJson.of(HazardCard.of(now, term)))
        .header(HttpHeaders.ETAG, tag)
        .build();
  }

  private Response answer(TermKind kind) {
    Catalog now = catalog.snapshot();
    String tag = Etags.strong(kind.code() + "-" + now.version());
    if (Etags.held(request, tag)) {
      return Response.notModified().header(HttpHeaders.ETAG, tag).build();
    }
    List<TermJson> terms =
        now.vocabulary().terms(kind).stream().map(term -> TermJson.of(now, term)).toList();
    return Response.ok(new VocabularyJson(now.version(), ListJson.of(terms)))
        .header(HttpHeaders.ETAG, tag)
        .build();
  }
}
