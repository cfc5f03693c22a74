package club.emberwell.web.club;

import club.emberwell.access.Downloads;
import club.emberwell.keep.BackupOverview;
import club.emberwell.keep.KnownBackup;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubBackups;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.vertx.http.Uncompressed;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.resteasy.reactive.RestPath;

/** How old the newest backup is, all that are kept, and what an owner does with them. */
@Path(BackupPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class BackupPages extends Pages {
  static final String PATH = "/desk/club/backups";

  private final ClubBackups backups;
  private final String home;

  BackupPages(ClubBackups backups, @ConfigProperty(name = "emberwell.home") String home) {
    this.backups = backups;
    this.home = home;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance backups(View view, Form form);

    static native TemplateInstance backup(One one, Form form);
  }

  /**
   * What the page says.
   *
   * @param newest the newest that can be counted on; null where there is none
   * @param caution null where all is well
   * @param rows all that are kept
   * @param restore what to type to bring one back
   */
  record View(
      BackupRow newest,
      String caution,
      Making making,
      List<BackupRow> rows,
      BackupOverview.Schedule schedule,
      String restore) {

    /** Whether something goes on that the page waits for. */
    public boolean isMoving() {
      return making.since() != null || rows.stream().anyMatch(BackupRow::verifying);
    }
  }

  /**
   * What becomes of making one.
   *
   * @param since when the one that is being made was begun; null: none is
   * @param failed the last one, where it came to nothing
   */
  record Making(Instant since, KnownBackup failed) {}

  /**
   * One backup.
   *
   * @param row null where there is no file, or not yet
   */
  record One(KnownBackup backup, BackupRow row, String restore) {}

  @GET
  public TemplateInstance backups() {
    return all(new Form());
  }

  private TemplateInstance all(Form form) {
    BackupOverview all = backups.overview(actor());
    Instant now = Instant.now();
    return Templates.backups(
        new View(
            all.newest().map(one -> BackupRow.of(one, now)).orElse(null),
            all.caution(now).orElse(null),
            new Making(
                all.running().map(KnownBackup::startedAt).orElse(null), all.failed().orElse(null)),
            all.kept().stream().map(one -> BackupRow.of(one, now)).toList(),
            all.schedule(),
            restore(all.newest().map(one -> one.file().path().toString()).orElse("FILE"))),
        form);
  }

  private String restore(String file) {
    return "emberwell restore --replace --home %s %s".formatted(home, file);
  }

  @POST
  public Response make() {
    return press(Form::new, this::all).run(s -> backups.make(actor())).then(PATH);
  }

  @GET
  @Path("{id}")
  public TemplateInstance backup(@RestPath UUID id) {
    return one(id, new Form());
  }

  private TemplateInstance one(UUID id, Form form) {
    KnownBackup backup = backups.get(actor(), id);
    return Templates.backup(
        new One(
            backup,
            backup.isKept() ? BackupRow.of(backup, Instant.now()) : null,
            backup.isKept() ? restore(backup.file().path().toString()) : null),
        form);
  }

  @POST
  @Path("{id}/verify")
  public Response verify(@RestPath UUID id, SentForm sent) {
    return take(sent, Form::new, form -> one(id, form))
        .attemptTo(s -> backups.verify(actor(), id))
        .then(PATH);
  }

  @POST
  @Path("{id}/archive")
  @Produces({"application/zip", MediaType.TEXT_HTML})
  @Uncompressed
  public Response archive(@RestPath UUID id, SentForm sent) {
    return take(sent, Form::new, form -> one(id, form))
        .attempt(s -> backups.archive(actor(), id, given(s)))
        .answer(Downloads::backup);
  }
}
