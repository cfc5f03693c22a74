package club.emberwell.api.catalog;

import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Role;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Materials, coatings, colours and defects with their synonyms and cautions. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.READ)
@Tag(name = "Vocabulary")
public class VocabularyResource {
  private final CatalogService catalog;

  VocabularyResource(CatalogService catalog) {
    this.catalog = catalog;
  }

  /** Every living term, parents before children; the version is that of the whole vocabulary. */
  @Schema(name = "Vocabulary")
  record VocabularyJson(long version, @JsonUnwrapped ListJson<TermJson> terms) {}

  @WithEtag
  @GET
  @Path("materials")
  @Operation(operationId = "listMaterials", summary = "All materials")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response materials(@Context Request request) {
    return answer(TermKind.MATERIAL, request);
  }

  @WithEtag
  @GET
  @Path("coatings")
  @Operation(operationId = "listCoatings", summary = "All coatings")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response coatings(@Context Request request) {
    return answer(TermKind.COATING, request);
  }

  @WithEtag
  @GET
  @Path("colours")
  @Operation(operationId = "listColours", summary = "All colour words")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response colours(@Context Request request) {
    return answer(TermKind.COLOUR, request);
  }

  @WithEtag
  @GET
  @Path("defects")
  @Operation(operationId = "listDefects", summary = "All named defects")
  @APIResponseSchema(value = VocabularyJson.class, responseCode = "200")
  public Response defects(@Context Request request) {
    return answer(TermKind.DEFECT, request);
  }

  private Response answer(TermKind kind, Request request) {
    Catalog now = catalog.snapshot();
    EntityTag tag = new EntityTag(kind.code() + "-" + now.version());
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
    if (unchanged != null) {
      return unchanged.tag(tag).build();
    }
    List<TermJson> terms =
        now.vocabulary().terms(kind).stream().map(term -> TermJson.of(now, term)).toList();
    return Response.ok(new VocabularyJson(now.version(), ListJson.of(terms))).tag(tag).build();
  }
}
