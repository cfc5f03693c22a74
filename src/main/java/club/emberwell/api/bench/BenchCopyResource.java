package club.emberwell.api.bench;

import club.emberwell.access.Awaited;
import club.emberwell.access.Downloads;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.exchange.bench.BenchCopy;
import club.emberwell.exchange.bench.BenchRestore;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.apache.commons.codec.digest.DigestUtils;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own bench as one file, and back. */
@Path("/api/v1/bench/copy")
@RolesAllowed(Role.WRITE)
@Tag(name = "Bench")
public class BenchCopyResource {
  private final BenchCopy copies;
  private final BenchRestore restore;
  private final ApiRequest request;

  BenchCopyResource(BenchCopy copies, BenchRestore restore, ApiRequest request) {
    this.copies = copies;
    this.restore = restore;
    this.request = request;
  }

  @GET
  @Produces("application/zip")
  @Fails(ProblemKind.TOO_FAST)
  @Operation(
      operationId = "saveBench",
      summary = "All that lies on my bench in one zip file",
      description =
          "JSON Lines with their schemas and sums, photos, and a page to read. Its format stands in"
              + " the file itself.")
  public Response save() {
    return Downloads.once(copies.save(request.actor()), "bench.zip");
  }

  @Keyed
  @POST
  @Blocking
  @Consumes({"application/zip", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Fails({ProblemKind.BUSY, ProblemKind.INVALID_FIELDS})
  @Operation(
      operationId = "restoreBench",
      summary = "Restore my bench from such a file",
      description =
          "Writes what is not here; what is here with other words stays, and that of the file comes"
              + " beside it. The same file again writes nothing twice, and goes on with photos that"
              + " are missing. preview=true writes nothing. Needs an Idempotency-Key.")
  @APIResponseSchema(value = BenchCopyJson.class, responseCode = "200")
  public Uni<Response> restore(
      @QueryParam("preview") @DefaultValue("false") boolean preview, InputStream body) {
    Actor actor = request.actor();
    java.nio.file.Path file = file(body);
    return Awaited.of(restore.of(actor, file, preview))
        .map(
            outcome ->
                request.once(
                    List.of(sum(file), preview),
                    () -> Response.ok(BenchCopyJson.of(outcome)).build()))
        .onTermination()
        .invoke(() -> forget(file));
  }

  /** How much may be sent was looked at before anything was received. */
  private static java.nio.file.Path file(InputStream body) {
    try {
      java.nio.file.Path file = Files.createTempFile("emberwell-bench-", ".zip");
      Files.copy(body, file, StandardCopyOption.REPLACE_EXISTING);
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String sum(java.nio.file.Path file) {
    try {
      return new DigestUtils(DigestUtils.getSha256Digest()).digestAsHex(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void forget(java.nio.file.Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
