package club.emberwell.api.member;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.Downloads;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.PasswordAgain;
import club.emberwell.keep.BackupCause;
import club.emberwell.keep.BackupOverview;
import club.emberwell.keep.BackupState;
import club.emberwell.keep.KnownBackup;
import club.emberwell.keep.Trial;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubBackups;
import club.emberwell.member.session.Proof.Given;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.quarkus.vertx.http.Uncompressed;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.headers.Header;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The backups of the club. */
@Path(BackupResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.OWN)
@Tag(name = "Club")
public class BackupResource {
  static final String PATH = ApiPaths.BASE + "/club/backups";

  private static final String BEGUN = "Where to ask how far it is.";

  private final ClubBackups backups;
  private final ApiRequest request;
  private final ClientAddress client;

  BackupResource(ClubBackups backups, ApiRequest request, ClientAddress client) {
    this.backups = backups;
    this.request = request;
    this.client = client;
  }

  /**
   * The backups, newest first.
   *
   * @param newest the newest that can be counted on; left out where there is none
   * @param caution what somebody should be warned of, in a sentence; left out where all is well
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "Backups")
  record BackupsJson(
      @JsonUnwrapped ListJson<BackupJson> backups,
      @Nullable UUID newest,
      @Nullable String caution,
      ScheduleJson schedule) {}

  /**
   * What the operator has set.
   *
   * @param on whether the server makes one each day
   * @param at the time of day, in UTC
   * @param keep how many made by the schedule stay, and how many made by hand
   * @param path the folder that holds them, on each machine
   */
  @Schema(name = "BackupSchedule")
  record ScheduleJson(boolean on, @Schema(examples = "02:10") String at, int keep, String path) {
    static ScheduleJson of(BackupOverview.Schedule set) {
      return new ScheduleJson(set.on(), set.at().toString(), set.keep(), set.place().toString());
    }
  }

  /**
   * A backup.
   *
   * @param createdAt when it was begun
   * @param endedAt left out while it is being made
   * @param failure why there is none, in a sentence; left out where there is
   * @param archive its file; left out where there is none
   * @param verification the last try to bring it back; left out where it was never tried
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "Backup")
  record BackupJson(
      UUID id,
      BackupCause cause,
      BackupState state,
      Instant createdAt,
      @Nullable Instant endedAt,
      @Nullable String failure,
      @Nullable ArchiveJson archive,
      @Nullable VerificationJson verification) {
    static BackupJson of(KnownBackup known) {
      return new BackupJson(
          known.id(),
          known.cause(),
          known.state(),
          known.startedAt(),
          known.endedAt(),
          known.failure(),
          known.file() == null ? null : ArchiveJson.of(known.node(), known.file()),
          known.trial() == null ? null : VerificationJson.of(known.trial()));
    }
  }

  /**
   * The file of a backup.
   *
   * @param node on which machine it lies
   * @param bytes its size
   * @param madeAt the moment that it holds
   * @param program the version that wrote it
   * @param tables the version of its tables
   */
  @Schema(name = "BackupArchive")
  record ArchiveJson(
      String name,
      String node,
      String path,
      long bytes,
      Instant madeAt,
      String program,
      int tables) {
    static ArchiveJson of(String node, KnownBackup.ArchiveFile file) {
      return new ArchiveJson(
          file.name(),
          node,
          file.path().toString(),
          file.bytes(),
          file.madeAt(),
          file.program(),
          file.tables());
    }
  }

  /**
   * A try whether a backup can be brought back.
   *
   * @param outcome running, good, damaged, or failed where it could not be tried
   * @param at when it ended; while it runs, when it began
   * @param detail why, in a sentence; left out where all is well
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "BackupVerification")
  record VerificationJson(Trial.Outcome outcome, Instant at, @Nullable String detail) {
    static VerificationJson of(Trial trial) {
      return new VerificationJson(trial.outcome(), trial.at(), trial.says());
    }
  }

  @GET
  @Operation(
      operationId = "listBackups",
      summary = "The backups, newest first",
      description = "Those being made and those that failed are among them.")
  public BackupsJson list() {
    BackupOverview all = backups.overview(request.actor());
    return new BackupsJson(
        ListJson.of(all.all().stream().map(BackupJson::of).toList()),
        all.newest().map(KnownBackup::id).orElse(null),
        all.caution(Instant.now()).orElse(null),
        ScheduleJson.of(all.schedule()));
  }

  @POST
  @Consumes(MediaType.WILDCARD)
  @Operation(
      operationId = "makeBackup",
      summary = "Make a backup now",
      description =
          "It is made in the background: ask for what Location names until its state is no longer"
              + " running. While one is being made, it is that one. Takes no body and no"
              + " Idempotency-Key.")
  @APIResponse(
      responseCode = "202",
      headers =
          @Header(
              name = HttpHeaders.LOCATION,
              description = BEGUN,
              required = true,
              schema = @Schema(type = SchemaType.STRING, format = "uri-reference")),
      content = @Content(schema = @Schema(implementation = BackupJson.class)))
  public Response make() {
    return begun(backups.make(request.actor()));
  }

  @GET
  @Path("{id}")
  @Operation(operationId = "getBackup", summary = "One backup")
  public BackupJson get(@PathParam("id") UUID id) {
    return BackupJson.of(backups.get(request.actor(), id));
  }

  @POST
  @Path("{id}/verifications")
  @Consumes(MediaType.WILDCARD)
  @Fails(ProblemKind.STATE_FORBIDS)
  @Operation(
      operationId = "verifyBackup",
      summary = "Try whether a backup can be brought back",
      description =
          "Checks every sum, brings it back beside the club's tables, compares every table and"
              + " removes it again, in the background: ask for what Location names until its"
              + " verification is no longer running. One is verified at a time. Takes no body and"
              + " no Idempotency-Key.")
  @APIResponse(
      responseCode = "202",
      headers =
          @Header(
              name = HttpHeaders.LOCATION,
              description = BEGUN,
              required = true,
              schema = @Schema(type = SchemaType.STRING, format = "uri-reference")),
      content = @Content(schema = @Schema(implementation = BackupJson.class)))
  public Response verify(@PathParam("id") UUID id) {
    return begun(backups.verify(request.actor(), id));
  }

  private static Response begun(KnownBackup known) {
    return Response.accepted(BackupJson.of(known))
        .location(URI.create(PATH + "/" + known.id()))
        .build();
  }

  @POST
  @Path("{id}/archive")
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces("application/zip")
  @Uncompressed
  @Fails({ProblemKind.CONFIRMATION_REQUIRED, ProblemKind.STATE_FORBIDS})
  @Operation(
      operationId = "downloadBackup",
      summary = "The file of a backup",
      description =
          "It holds everything, secrets too. A token alone is not enough: send your password."
              + " Takes no Idempotency-Key.")
  public Response archive(@PathParam("id") UUID id, PasswordAgain sent) {
    Given given = new Given(request.credential(), sent.password(), client.prefix());
    return Downloads.backup(
        Proofs.at("/password", () -> backups.archive(request.actor(), id, given)));
  }
}
