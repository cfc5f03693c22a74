package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.Problems;
import club.emberwell.access.SessionCookie;
import club.emberwell.member.ClubSettings;
import club.emberwell.member.ClubSettings.Door;
import club.emberwell.member.Outcome;
import club.emberwell.member.Sessions;
import club.emberwell.member.Sessions.SignedIn;
import club.emberwell.member.SingleSignOn;
import club.emberwell.member.SingleSignOn.End;
import club.emberwell.member.SingleSignOn.Suggestion;
import club.emberwell.member.SsoArrivals;
import club.emberwell.member.SsoArrivals.Arrived;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** Signing in by the club's provider, and choosing a name the first time. */
@Path("/sign-in/sso")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class SsoPages {
  private static final String TRIP = "emberwell-trip";
  private static final String ARRIVAL = "emberwell-arrival";
  private static final Duration COOKIE_LIFE = Duration.ofMinutes(15);
  private static final int REQUEST_LENGTH = 1000;

  private final SingleSignOn sso;
  private final SsoArrivals arrivals;
  private final ClubSettings club;
  private final Sessions sessions;
  private final SessionCookie cookies;
  private final CurrentActor current;
  private final ClientAddress address;
  private final RoutingContext request;
  private final PageFrame page;

  SsoPages(
      SingleSignOn sso,
      SsoArrivals arrivals,
      ClubSettings club,
      Sessions sessions,
      SessionCookie cookies,
      CurrentActor current,
      ClientAddress address,
      RoutingContext request,
      PageFrame page) {
    this.sso = sso;
    this.arrivals = arrivals;
    this.club = club;
    this.sessions = sessions;
    this.cookies = cookies;
    this.current = current;
    this.address = address;
    this.request = request;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance broken(String why);

    static native TemplateInstance name(Form form, boolean shut);

    static native TemplateInstance waiting(String handle);
  }

  @GET
  public Response begin(@RestQuery String to, @RestQuery String invitation) {
    requireProvider();
    Outcome<SingleSignOn.Start> outcome =
        sso.begin(current.get(), LocalPath.of(to, "/").toString(), invitation);
    if (outcome instanceof Outcome.Done<SingleSignOn.Start> done) {
      cookies.set(request, TRIP, done.value().cookie(), COOKIE_LIFE);
      return Response.seeOther(done.value().at()).build();
    }
    return broken(outcome);
  }

  @GET
  @Path("back")
  public Response back(
      @RestQuery String state,
      @RestQuery String code,
      @RestQuery String iss,
      @HeaderParam("User-Agent") String browser) {
    requireProvider();
    String trip = cookies.read(request, TRIP).orElse(null);
    cookies.clear(request, TRIP);
    Outcome<End> outcome = sso.finish(current.get(), trip, state, code, iss, browser);
    if (!(outcome instanceof Outcome.Done<End> done)) {
      return broken(outcome);
    }
    if (done.value() instanceof End.Known known) {
      return begin(known.session(), known.to());
    } else if (done.value() instanceof End.Newcomer newcomer) {
      cookies.set(request, ARRIVAL, newcomer.secret(), COOKIE_LIFE);
      return Response.seeOther(URI.create("/sign-in/sso/name")).build();
    }
    return Response.seeOther(LocalPath.of(((End.Linked) done.value()).to(), "/me")).build();
  }

  private Response begin(SignedIn session, String to) {
    cookies.read(request).ifPresent(sessions::signOut);
    cookies.set(request, session);
    return Response.seeOther(LocalPath.of(to, "/")).build();
  }

  @GET
  @Path("name")
  public Response name() {
    requireProvider();
    Optional<Suggestion> newcomer = cookies.read(request, ARRIVAL).flatMap(sso::newcomer);
    return newcomer
        .map(n -> Response.ok(namePage(form(n.handle(), "", n), n)).build())
        .orElseGet(() -> Response.seeOther(URI.create("/sign-in/sso")).build());
  }

  @POST
  @Path("name")
  public Response choose(
      @RestForm("handle") String handle,
      @RestForm("request") String asked,
      @HeaderParam("User-Agent") String browser) {
    requireProvider();
    String secret = cookies.read(request, ARRIVAL).orElse("");
    Optional<Suggestion> newcomer = sso.newcomer(secret);
    if (newcomer.isEmpty()) {
      return Response.seeOther(URI.create("/sign-in/sso")).build();
    }
    Outcome<Arrived> outcome = arrivals.enter(secret, handle, asked, address.prefix(), browser);
    if (!(outcome instanceof Outcome.Done<Arrived> done)) {
      page.fail();
      Form form = form(handle, asked, newcomer.get()).remarks(Outcomes.remarks(outcome));
      return Outcomes.status(outcome).entity(namePage(form, newcomer.get())).build();
    }
    cookies.clear(request, ARRIVAL);
    return done.value()
        .session()
        .map(session -> begin(session, "/bench"))
        .orElseGet(() -> Response.ok(Templates.waiting(done.value().member().handle())).build());
  }

  private void requireProvider() {
    if (!sso.available()) {
      throw Problems.notFound().exception();
    }
  }

  private Response broken(Outcome<?> outcome) {
    page.fail();
    return Outcomes.status(outcome)
        .entity(Templates.broken(Outcomes.remarks(outcome).get(0).detail()))
        .build();
  }

  private TemplateInstance namePage(Form form, Suggestion newcomer) {
    return Templates.name(form, club.door() == Door.INVITATION && !newcomer.invited());
  }

  private Form form(String handle, String asked, Suggestion newcomer) {
    Form form = new Form().add(AccountFields.handle(handle));
    if (club.door() == Door.REQUEST && !newcomer.invited()) {
      form.add(
          Field.of("request", "Who you are and why you would like to join")
              .hint("Moderators read it; it goes once they have decided.")
              .value(asked)
              .maxLength(REQUEST_LENGTH)
              .required());
    }
    return form;
  }
}
