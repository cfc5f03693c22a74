package club.emberwell.web.about;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;

/** What each kind of problem means and what to do: where the {@code type} of an answer leads. */
@Path(ProblemKind.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class ProblemPages extends Pages {
  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance problems(List<ProblemKind> kinds);

    static native TemplateInstance kind(ProblemKind kind);
  }

  @GET
  public TemplateInstance all() {
    return Templates.problems(List.of(ProblemKind.values()));
  }

  @GET
  @Path("{code}")
  public TemplateInstance one(@RestPath String code) {
    ProblemKind kind =
        Coded.of(ProblemKind.class, code).orElseThrow(() -> new EntryUnknown("kind of problem"));
    page.preview(Preview.of(kind.type(), kind.meaning() + " " + kind.remedy()));
    return Templates.kind(kind);
  }
}
