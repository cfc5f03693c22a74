package club.emberwell.api.data;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.exchange.open.DataFile;
import club.emberwell.exchange.open.DataPackage;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.member.Licence;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** All that the club shares, as files. */
@Path(ApiPaths.BASE + "/data")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.READ)
@Tag(name = "Data")
public class DataResource {
  private final PackageMaker maker;
  private final PublicUrl url;

  DataResource(PackageMaker maker, PublicUrl url) {
    this.maker = maker;
    this.url = url;
  }

  /**
   * The package of data as it was made last.
   *
   * @param trials how many are in it
   * @param licences SPDX ids under which its records stand; each record says its own
   * @param zip all files in one
   * @param publicKey where the key stands that checks the signature (Ed25519)
   */
  public record DataJson(
      Instant createdAt,
      int trials,
      int reports,
      int members,
      List<Licence> licences,
      FileJson zip,
      List<FileJson> files,
      String publicKey) {}

  /**
   * A file and where to load it.
   *
   * @param bytes its size
   * @param sha256 its sum, in hexadecimal digits
   */
  public record FileJson(String name, String url, long bytes, String sha256) {}

  @GET
  @Fails(ProblemKind.NOT_FOUND)
  @Operation(
      operationId = "getData",
      summary = "The data to take along",
      description =
          "Every live trial as a Data Package: CSV with its schema, the reports as JSON lines, the"
              + " vocabularies as SKOS, with sums and a signature. Made anew every night.")
  public DataJson get() {
    DataPackage made = maker.newest().orElseThrow(() -> Problems.notFound().exception());
    return new DataJson(
        made.madeAt(),
        made.counts().trials(),
        made.counts().reports(),
        made.counts().members(),
        made.licences(),
        file(made.zip()),
        made.files().stream().map(this::file).toList(),
        address("signing-key.pem"));
  }

  private FileJson file(DataFile file) {
    return new FileJson(file.name(), address(file.name()), file.bytes(), file.sha256());
  }

  private String address(String file) {
    return url.of("/data/" + file);
  }
}
