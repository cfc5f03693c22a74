package club.emberwell.web.account;

import club.emberwell.access.problem.Problems;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.SignedIn;
import club.emberwell.member.sso.SingleSignOn;
import club.emberwell.member.sso.SingleSignOn.End;
import club.emberwell.member.sso.SingleSignOn.Suggestion;
import club.emberwell.member.sso.SsoArrivals;
import club.emberwell.member.sso.SsoArrivals.Arrived;
import club.emberwell.remark.TurnedDown;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.FormPage;
import club.emberwell.web.frame.LocalPath;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestHeader;
import org.jboss.resteasy.reactive.RestQuery;

/** Signing in by the club's provider, and choosing a name the first time. */
@Path("/sign-in/sso")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class SsoPages extends Pages {
  private static final String TRIP = "emberwell-trip";
  private static final String ARRIVAL = "emberwell-arrival";
  private static final Duration COOKIE_LIFE = Duration.ofMinutes(15);

  private final SingleSignOn sso;
  private final SsoArrivals arrivals;
  private final ClubOptions club;
  private final Proof proof;
  private final Sessions sessions;
  private final ThisBrowser browser;

  SsoPages(
      SingleSignOn sso,
      SsoArrivals arrivals,
      ClubOptions club,
      Proof proof,
      Sessions sessions,
      ThisBrowser browser) {
    this.sso = sso;
    this.arrivals = arrivals;
    this.club = club;
    this.proof = proof;
    this.sessions = sessions;
    this.browser = browser;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance ask(URI on);

    static native TemplateInstance broken(String why);

    static native TemplateInstance name(Form form, boolean shut);
  }

  /**
   * Begins a trip. Where another site led here, somebody must first want it; and only from a page
   * of ours the account at the provider is linked to the one here, so that nobody links their own
   * to somebody else's.
   *
   * @param from what the browser says of who led here; null from an old one
   */
  @GET
  public Response begin(
      @RestQuery String to,
      @RestQuery String invitation,
      @RestHeader("Sec-Fetch-Site") String from) {
    requireProvider();
    String after = LocalPath.of(to, "/").toString();
    if ("cross-site".equals(from) || "same-site".equals(from)) {
      return Response.ok(Templates.ask(here(after, invitation))).build();
    }
    try {
      UUID linking = null;
      if ("same-origin".equals(from) && actor().signedIn()) {
        // who links an account signs in with it from then on
        proof.recent(actor(), new Given(current.credential(), null, browser.address()));
        linking = actor().memberId();
      }
      var start = sso.begin(linking, after, invitation);
      browser.keep(TRIP, start.cookie(), COOKIE_LIFE);
      return Response.seeOther(start.at()).build();
    } catch (TurnedDown e) {
      return broken(e);
    }
  }

  private static URI here(String to, String invitation) {
    UriBuilder here = UriBuilder.fromPath("/sign-in/sso").queryParam("to", "{to}");
    return invitation == null
        ? here.build(to)
        : here.queryParam("invitation", "{invitation}").build(to, invitation);
  }

  @GET
  @Path("confirm")
  public Response confirm() {
    requireProvider();
    if (!actor().signedIn()) {
      return to("/sign-in/sso");
    }
    try {
      var start = sso.confirm(actor());
      browser.keep(TRIP, start.cookie(), COOKIE_LIFE);
      return Response.seeOther(start.at()).build();
    } catch (TurnedDown e) {
      return broken(e);
    }
  }

  @GET
  @Path("back")
  public Response back(@RestQuery String state, @RestQuery String code, @RestQuery String iss) {
    requireProvider();
    String trip = browser.read(TRIP).orElse(null);
    browser.drop(TRIP);
    try {
      return goOn(sso.finish(actor(), trip, state, code, iss, browser.from()));
    } catch (TurnedDown e) {
      return broken(e);
    }
  }

  private Response goOn(End end) {
    if (end instanceof End.Known known) {
      return begin(known.session(), known.to());
    } else if (end instanceof End.Newcomer newcomer) {
      browser.keep(ARRIVAL, newcomer.secret(), COOKIE_LIFE);
      return Response.seeOther(URI.create("/sign-in/sso/name")).build();
    }
    if (end instanceof End.Confirmed) {
      sessions.confirmed(actor().memberId(), current.credential());
      return to("/me?done=confirmed");
    }
    return Response.seeOther(LocalPath.of(((End.Linked) end).to(), "/me")).build();
  }

  private Response begin(SignedIn session, String to) {
    browser.begin(session);
    return Response.seeOther(LocalPath.of(to, "/")).build();
  }

  @GET
  @Path("name")
  public Response name() {
    requireProvider();
    Optional<Suggestion> newcomer = browser.read(ARRIVAL).flatMap(sso::newcomer);
    return newcomer
        .map(n -> Response.ok(namePage(form(n), n)).build())
        .orElseGet(() -> Response.seeOther(URI.create("/sign-in/sso")).build());
  }

  @POST
  @Path("name")
  public Response choose(SentForm sent) {
    requireProvider();
    String secret = browser.read(ARRIVAL).orElse("");
    Optional<Suggestion> newcomer = sso.newcomer(secret);
    if (newcomer.isEmpty()) {
      return to("/sign-in/sso");
    }
    Suggestion who = newcomer.get();
    return take(sent, () -> form(who), form -> namePage(form, who))
        .attempt(s -> arrivals.enter(secret, s.typed("handle"), s.typed("request"), browser.from()))
        .answer(this::arrived);
  }

  private Response arrived(Arrived arrived) {
    browser.drop(ARRIVAL);
    return arrived
        .session()
        .map(session -> begin(session, "/bench"))
        .orElseGet(
            () ->
                Response.ok(SignPages.Templates.waiting(arrived.member().handle(), "/sign-in/sso"))
                    .build());
  }

  private void requireProvider() {
    if (!sso.available()) {
      throw Problems.notFound().exception();
    }
  }

  private Response broken(TurnedDown e) {
    page.fail(e);
    return FormPage.answer(e).entity(Templates.broken(e.getMessage())).build();
  }

  private TemplateInstance namePage(Form form, Suggestion newcomer) {
    return Templates.name(form, club.door() == Door.INVITATION && !newcomer.invited());
  }

  private Form form(Suggestion newcomer) {
    Form form = new Form().add(AccountFields.handle().value(newcomer.handle()));
    return club.door() == Door.REQUEST && !newcomer.invited()
        ? form.add(AccountFields.request())
        : form;
  }
}
