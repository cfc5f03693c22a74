package club.emberwell.web.club;

import club.emberwell.exchange.example.Example;
import club.emberwell.exchange.example.ExampleClub;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestQuery;

/** The invented club inside the real one: loading it, how far it is, removing it. */
@Path(ExamplePages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class ExamplePages extends Pages {
  static final String PATH = "/desk/club/example";

  private final ExampleClub example;

  ExamplePages(ExampleClub example) {
    this.example = example;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance example(Example example, Form form);

    static native TemplateInstance remove(Example example);
  }

  @GET
  public TemplateInstance example(@RestQuery String done) {
    if ("removing".equals(done)) {
      page.say("The example club is being removed.");
    }
    return shown(new Form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.example(example.get(actor()), form);
  }

  @POST
  public Response load(SentForm sent) {
    return take(sent, Form::new, this::shown).attemptTo(s -> example.load(actor())).then(PATH);
  }

  @GET
  @Path("remove")
  public TemplateInstance ask() {
    return Templates.remove(example.get(actor()));
  }

  @POST
  @Path("remove")
  public Response remove() {
    example.remove(actor());
    return to(PATH + "?done=removing");
  }
}
