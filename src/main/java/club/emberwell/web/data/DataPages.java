package club.emberwell.web.data;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.SentFile;
import club.emberwell.access.problem.Problems;
import club.emberwell.exchange.open.DataFile;
import club.emberwell.exchange.open.DataPackage;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.exchange.open.PackageShelf;
import club.emberwell.exchange.open.SearchExport;
import club.emberwell.member.Licence;
import club.emberwell.member.Role;
import club.emberwell.web.frame.FileSize;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.vertx.http.Uncompressed;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Locale;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** All that the club shares, to take along. */
@Path("/data")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class DataPages extends Pages {
  private static final String PATH = "/data";

  private final PackageMaker maker;
  private final PackageShelf shelf;
  private final PublicUrl url;

  DataPages(PackageMaker maker, PackageShelf shelf, PublicUrl url) {
    this.maker = maker;
    this.shelf = shelf;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance data(View view);
  }

  /**
   * What the page says.
   *
   * @param given null while no package was made yet
   * @param most trials of a search in one file
   * @param minutes until what was taken back is out
   */
  record View(Given given, Lines lines, String most, long minutes) {}

  /** The package. */
  record Given(
      DataPackage made, String size, String trials, List<Licence> licences, List<Row> files) {}

  /** A file, with its size as people say it. */
  record Row(String name, String size) {}

  /** What to type first. */
  record Lines(List<String> r, List<String> python, String key) {}

  @GET
  public TemplateInstance data(@RestQuery String done) {
    say(done, "The data are being made anew. That takes a few minutes.");
    page.preview(
        Preview.of(
            PATH,
            "All laser settings and results that members of "
                + page.getClubName()
                + " share, as CSV with units and as JSON lines, each with its licence."));
    String table = url.of(PATH + "/trials.csv");
    return Templates.data(
        new View(
            maker.newest().map(DataPages::given).orElse(null),
            new Lines(
                FirstLines.r(table), FirstLines.python(table), url.of(PATH + "/signing-key.pem")),
            number(SearchExport.MOST),
            PackageMaker.OUT_WITHIN.toMinutes()));
  }

  private static Given given(DataPackage made) {
    return new Given(
        made,
        FileSize.of(made.zip().bytes()),
        "%s, in %s, of %s"
            .formatted(
                number(made.counts().trials(), "trial"),
                number(made.counts().reports(), "report"),
                number(made.counts().members(), "member")),
        made.licences(),
        made.files().stream()
            .map(file -> new Row(file.name(), FileSize.of(file.bytes())))
            .toList());
  }

  private static String number(int count, String what) {
    return number(count) + " " + what + (count == 1 ? "" : "s");
  }

  private static String number(int count) {
    return String.format(Locale.ROOT, "%,d", count);
  }

  @GET
  @Path("{file}")
  @Produces(MediaType.WILDCARD)
  @Uncompressed
  public Response file(
      @RestPath String file, @Context Request conditions, @Context HttpHeaders headers) {
    DataPackage made = maker.newest().orElseThrow(() -> Problems.notFound().exception());
    DataFile wanted = made.file(file).orElseThrow(() -> Problems.notFound().exception());
    java.nio.file.Path here =
        shelf.file(made, wanted).orElseThrow(() -> Problems.notFound().exception());
    return new SentFile(here, wanted.contentType(), file, wanted.sha256())
        .answer(conditions, headers);
  }

  @POST
  @RolesAllowed(Role.OWN)
  public Response make() {
    maker.ask();
    return to(PATH + "?done=asked");
  }
}
