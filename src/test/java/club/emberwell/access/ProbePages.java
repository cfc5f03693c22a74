package club.emberwell.access;

import club.emberwell.api.writes.KeyedWrites;
import club.emberwell.member.Role;
import club.emberwell.member.session.Sessions;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/** Pages and resources that exist in tests only, to try what guards all others. */
@Path("/")
@Produces(MediaType.TEXT_PLAIN)
public class ProbePages {
  private static final AtomicInteger WRITES = new AtomicInteger();

  private final FormToken token;
  private final Sessions sessions;
  private final SessionCookie cookie;
  private final CurrentActor actor;
  private final ClientAddress client;
  private final KeyedWrites writes;

  ProbePages(
      FormToken token,
      Sessions sessions,
      SessionCookie cookie,
      CurrentActor actor,
      ClientAddress client,
      KeyedWrites writes) {
    this.token = token;
    this.sessions = sessions;
    this.cookie = cookie;
    this.actor = actor;
    this.client = client;
    this.writes = writes;
  }

  @GET
  @Path("test-only/form")
  @PermitAll
  public String form() {
    return token.getToken();
  }

  @POST
  @Path("test-only/form")
  @PermitAll
  public String sent() {
    return "done";
  }

  @POST
  @Path("test-only/sign-in")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @PermitAll
  public String signIn(
      @FormParam("handle") String handle,
      @FormParam("password") String password,
      RoutingContext request) {
    cookie.set(request, sessions.signIn(handle, password, "test", client.prefix()));
    return "done";
  }

  @GET
  @Path("test-only/who")
  @RolesAllowed(Role.WRITE)
  public String who() {
    return actor.get().handle();
  }

  @GET
  @Path("test-only/unannotated")
  public String unannotated() {
    return "never";
  }

  @GET
  @Path("api/test-only/fault")
  @PermitAll
  public String fault() {
    throw new IllegalStateException("secret detail of club.emberwell");
  }

  /** The same of a page. */
  @GET
  @Path("test-only/broken")
  @PermitAll
  public String broken() {
    throw new IllegalStateException("select secret from members");
  }

  @GET
  @Path("api/test-only/away")
  @PermitAll
  public String away() {
    throw new IllegalStateException(new SQLException("select secret", "08006"));
  }

  @GET
  @Path("test-only/elsewhere")
  @PermitAll
  public Response elsewhere() {
    return Response.seeOther(URI.create("/about?a=b#here")).build();
  }

  @GET
  @Path("api/test-only/full")
  @PermitAll
  public String full() {
    throw new IllegalStateException(new SQLException("could not extend file", "53100"));
  }

  @GET
  @Path("api/test-only/long")
  @PermitAll
  public StreamingOutput endless() {
    byte[] line = "a line of a long table\n".repeat(1000).getBytes(StandardCharsets.UTF_8);
    return out -> {
      for (int i = 0; i < 5000; i++) {
        out.write(line);
      }
    };
  }

  @POST
  @Path("api/test-only/writes")
  @Produces(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.WRITE)
  public Response write(Map<String, String> body) {
    return writes.once(
        body,
        () ->
            Response.status(201)
                .header("Location", "/api/test-only/writes/1")
                .entity(Map.of("writes", WRITES.incrementAndGet()))
                .build());
  }
}
