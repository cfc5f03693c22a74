package club.emberwell.web.bench;

import club.emberwell.access.Awaited;
import club.emberwell.access.Downloads;
import club.emberwell.exchange.bench.BenchCopy;
import club.emberwell.exchange.bench.BenchRestore;
import club.emberwell.exchange.bench.CopiesBusy;
import club.emberwell.exchange.bench.CopyOutcome;
import club.emberwell.exchange.bench.CopyRefused;
import club.emberwell.exchange.bench.SavedBench;
import club.emberwell.exchange.bench.SentBench;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;

/** A copy of one's bench: saved as a file; chosen, looked at and restored. */
@jakarta.ws.rs.Path(CopyPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class CopyPages extends Pages {
  static final String PATH = "/bench/copy";
  private static final String FILE = "file";
  private static final String ID = "id";

  private final BenchCopy copies;
  private final BenchRestore restore;
  private final SavedBench saved;
  private final SentBench sent;

  CopyPages(BenchCopy copies, BenchRestore restore, SavedBench saved, SentBench sent) {
    this.copies = copies;
    this.restore = restore;
    this.saved = saved;
    this.sent = sent;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance copy(SavedBench.Standing bench, Form form);

    static native TemplateInstance preview(CopyView copy, UUID id);

    static native TemplateInstance restored(CopyView copy);
  }

  @GET
  public TemplateInstance copy() {
    return shown(form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.copy(saved.of(actor()), form);
  }

  private static Form form() {
    return new Form().add(Field.of(FILE, "The file that you saved").aside());
  }

  @GET
  @jakarta.ws.rs.Path(FILE)
  @Produces({"application/zip", MediaType.TEXT_HTML})
  public Response save() {
    return Downloads.once(copies.save(actor()), "bench.zip");
  }

  /** Nothing is written: what was sent is kept while it is looked at. */
  @POST
  public Uni<Response> look(SentForm form) {
    List<Path> files = form.files(FILE);
    if (files.isEmpty()) {
      return Uni.createFrom()
          .item(refused(new EntryRefused(RemarkId.REQUIRED, "/file", "Choose the file first.")));
    }
    return answered(
        files.get(0),
        true,
        outcome ->
            Response.ok(Templates.preview(CopyView.of(outcome), sent.keep(actor(), files.get(0))))
                .build());
  }

  @POST
  @jakarta.ws.rs.Path("restore")
  public Uni<Response> restore(SentForm form) {
    Path file = sent.file(actor(), form.id(ID)).orElse(null);
    if (file == null) {
      String detail = "The file is no longer here. Choose it once more.";
      return Uni.createFrom().item(refused(new EntryRefused(RemarkId.REQUIRED, "/file", detail)));
    }
    return answered(
            file,
            false,
            outcome -> {
              if (outcome.photos().left() == 0) {
                sent.forget(actor());
              }
              return Response.ok(Templates.restored(CopyView.of(outcome, form.id(ID)))).build();
            })
        .onTermination()
        .invoke(() -> forget(file));
  }

  private Uni<Response> answered(
      Path file, boolean preview, Function<CopyOutcome, Response> answer) {
    return Awaited.of(restore.of(actor(), file, preview))
        .map(answer)
        .onFailure(CopyRefused.class)
        .recoverWithItem(this::refused)
        .onFailure(CopiesBusy.class)
        .recoverWithItem(
            e -> refused(new EntryRefused(RemarkId.PICTURES_BUSY, "/file", e.getMessage())));
  }

  private Response refused(EntryRefused why) {
    return press(CopyPages::form, this::shown)
        .run(
            s -> {
              throw why;
            })
        .then(PATH);
  }

  private static void forget(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
