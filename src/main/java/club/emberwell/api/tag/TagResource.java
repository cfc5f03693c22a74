package club.emberwell.api.tag;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.tag.Tagged;
import club.emberwell.tag.Tags;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What stands behind a label. */
@Path("/api/v1/tags")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.READ)
@Tag(name = "Tags")
public class TagResource {
  private final Tags tags;
  private final PublicUrl url;
  private final ApiRequest request;

  TagResource(Tags tags, PublicUrl url, ApiRequest request) {
    this.tags = tags;
    this.url = url;
    this.request = request;
  }

  /**
   * What a tag leads to.
   *
   * @param url what the label's square holds
   * @param kind of the tagged entry, with its id: only for who may see it
   * @param report whom others ask instead, left out where there is none
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record TagJson(
      String code,
      String url,
      @Nullable EntryKind kind,
      @Nullable UUID id,
      @Nullable UUID report) {}

  @Fails(ProblemKind.INVALID_FIELDS)
  @GET
  @Path("{code}")
  @Operation(
      operationId = "getTag",
      summary = "What a tag leads to",
      description =
          "Read kindly: any case, no dash, look-alikes. Its owner is told the entry, others only the"
              + " report it belongs to; 404 where that is not to be seen.")
  public TagJson follow(@PathParam("code") String code) {
    Tagged tagged = tags.find(code);
    UUID report = tags.report(tagged).orElse(null);
    boolean own = request.actor().is(tagged.author()) || !tagged.kind().isPrivate();
    if (!own && report == null) {
      throw new EntryUnknown("tag");
    }
    return new TagJson(
        tagged.code().text(),
        url.of(tagged.code().path()),
        own ? tagged.kind() : null,
        own ? tagged.id() : null,
        report);
  }
}
