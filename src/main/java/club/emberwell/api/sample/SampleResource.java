package club.emberwell.api.sample;

import club.emberwell.access.PublicUrl;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.sample.Sample;
import club.emberwell.sample.SamplePosting;
import club.emberwell.sample.Samples;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own test pieces; nobody else's can be seen. */
@Path(SampleResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Samples")
public class SampleResource {
  static final String PATH = "/api/v1/samples";

  private final Samples samples;
  private final PublicUrl url;
  private final ApiRequest request;

  SampleResource(Samples samples, PublicUrl url, ApiRequest request) {
    this.samples = samples;
    this.url = url;
    this.request = request;
  }

  @GET
  @Operation(
      operationId = "listSamples",
      summary = "My samples, newest first",
      description = "With q= those whose tag, place, notes or work hold every word.")
  public ListJson<SampleJson> list(@QueryParam("q") String text, @BeanParam ListQuery list) {
    return ListJson.of(samples.mine(request.actor(), text, list.part()), this::json);
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addSample",
      summary = "Put a sample away",
      description = "It gets a tag. Needs an Idempotency-Key.")
  @APIResponseSchema(value = SampleJson.class, responseCode = "201")
  public Response add(SampleRequest sent) {
    return request.once(
        sent,
        () -> {
          SamplePosting posting = SamplePosting.of(sent.id(), sent.written());
          Sample sample = samples.add(request.actor(), posting).sample();
          return answer(Response.created(URI.create(PATH + "/" + sample.id())), sample);
        });
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getSample", summary = "One of my samples")
  @APIResponseSchema(value = SampleJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), samples.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseSample",
      summary = "Write a sample anew",
      description = "Needs If-Match.")
  @APIResponseSchema(value = SampleJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, SampleRequest sent) {
    return answer(
        Response.ok(), samples.revise(request.actor(), id, request.version(), sent.written()));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawSample",
      summary = "Remove a sample",
      description = "It stays in the history; its tag is never given again. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    samples.withdraw(request.actor(), id, request.versionIfGiven());
  }

  private SampleJson json(Sample sample) {
    return SampleJson.of(sample, url.of(sample.tag().path()));
  }

  private Response answer(Response.ResponseBuilder response, Sample sample) {
    return ApiRequest.answer(response, sample.version(), json(sample));
  }
}
