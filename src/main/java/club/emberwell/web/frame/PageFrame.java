package club.emberwell.web.frame;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.access.RequestIds;
import club.emberwell.access.problem.Errors;
import club.emberwell.access.problem.Problems;
import club.emberwell.desk.told.Told;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.session.SignInProvider;
import club.emberwell.remark.TurnedDown;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.watch.Inbox;
import io.quarkus.runtime.BlockingOperationControl;
import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jboss.logging.Logger;

/** What the frame round every page needs to know. */
@Named("page")
@RequestScoped
public class PageFrame {
  private static final Logger LOG = Logger.getLogger(PageFrame.class);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss 'UTC'", Locale.ENGLISH);

  @Inject SecurityIdentity identity;
  @Inject UriInfo uri;
  @Inject ClubOptions club;
  @Inject SignInProvider provider;
  @Inject Inbox inbox;
  @Inject Told told;
  @Inject CurrentActor current;
  @Inject PublicUrl url;
  @Inject Assets assets;
  @Inject RoutingContext request;

  private boolean failed;
  private String notice;
  private Preview preview;

  /** One place of the top bar. */
  public record Place(String href, String label, String icon, boolean current) {}

  /** Marks this answer as a refused form, which its title must say. */
  public void fail() {
    failed = true;
  }

  /** Marks this answer as a refusal of whoever asks, which the log tells too. */
  public void fail(TurnedDown why) {
    fail();
    Errors.note(request, Problems.kind(why));
  }

  /** By which the people who run this server find this request in their log. */
  public String getRequestNumber() {
    return RequestIds.of(request);
  }

  /** A sentence above the page, e.g. that something was saved. */
  public void say(String sentence) {
    notice = sentence;
  }

  /** Says what others are told of this page; what says nothing is kept to itself. */
  public void preview(Preview of) {
    preview = of;
  }

  /**
   * What others are told of this page, with whole addresses; null where nothing is: to members
   * only, and of a form that was refused.
   */
  public Preview getPreview() {
    if (preview == null || failed || !isPublic()) {
      return null;
    }
    String drawn = preview.photo() == null ? preview.drawn() : null;
    String other = preview.photo() == null ? asset("icons/512.png") : preview.photo();
    return new Preview(
        url.of(preview.path()),
        preview.description(),
        url.of(drawn == null ? other : drawn),
        drawn,
        preview.feed(),
        preview.listed());
  }

  /** Whether others may be told of this page, be it only members. */
  public boolean isShareable() {
    return preview != null && !failed;
  }

  /** Today, for what is printed. */
  public String getToday() {
    return day(Instant.now());
  }

  /** The whole address of this page, as it is printed below it. */
  public String getAddress() {
    return url.of(getPath());
  }

  /** The page where this page's link is passed on. */
  public String getShare() {
    return "/share?of=" + URLEncoder.encode(getPath(), StandardCharsets.UTF_8);
  }

  private String getPath() {
    String query = uri.getRequestUri().getRawQuery();
    return uri.getRequestUri().getRawPath() + (query == null ? "" : "?" + query);
  }

  /** Whether search engines may list this page. */
  public boolean isListed() {
    Preview told = getPreview();
    return told != null && told.listed() && !isSignedIn();
  }

  /** Whether strangers read here. */
  public boolean isPublic() {
    return club.readingPublic();
  }

  public boolean isFailed() {
    return failed;
  }

  public String getNotice() {
    return notice;
  }

  public String getClubName() {
    return club.clubName();
  }

  /** Under which terms members share. */
  public String getLicence() {
    return club.card().licence();
  }

  /** A date as it stands on pages. */
  public String day(Instant when) {
    return DAY.format(when.atZone(ZoneOffset.UTC));
  }

  /** A day not long ago, in words. */
  public String lately(Instant when) {
    LocalDate today = LocalDate.now(ZoneOffset.UTC);
    LocalDate day = LocalDate.ofInstant(when, ZoneOffset.UTC);
    return day.equals(today)
        ? "today"
        : day.equals(today.minusDays(1)) ? "yesterday" : "on " + day(when);
  }

  /** What a field of an entry is called. */
  public String field(String pointer) {
    return FieldName.of(pointer);
  }

  /** A moment of the log, in UTC. */
  public String moment(Instant when) {
    return MOMENT.format(when.atZone(ZoneOffset.UTC));
  }

  public boolean isSignedIn() {
    return !identity.isAnonymous();
  }

  /** The id of who is signed in. */
  public String getMember() {
    return current.get().memberId().toString();
  }

  public String getHandle() {
    return identity.getPrincipal().getName();
  }

  /** Whether a stranger can join or ask to, without an invitation. */
  public boolean isJoinable() {
    return club.localSignIn() && club.door() != ClubOptions.Door.INVITATION;
  }

  public boolean isLocalSignIn() {
    return club.localSignIn();
  }

  /** Whether an invented club is here as an example. */
  public boolean isExample() {
    return club.hasExample();
  }

  /** What the sign-in provider is called; null where there is none. */
  public String getSingleSignOn() {
    return provider.issuer().map(issuer -> provider.label()).orElse(null);
  }

  /** How much waits in the inbox; null where nothing does or it cannot be asked right now. */
  public String getUnread() {
    if (!isSignedIn() || !BlockingOperationControl.isBlockingAllowed()) {
      return null;
    }
    try {
      Told.News news = told.news(current.get());
      int unread = inbox.unread(current.get()) + news.total();
      if (unread == 0) {
        return null;
      }
      return unread > TalkLimits.UNREAD ? TalkLimits.UNREAD + "+" : Integer.toString(unread);
    } catch (RuntimeException e) {
      // the page that says the database is away has this frame too
      LOG.debug("the unread count cannot be read", e);
      return null;
    }
  }

  public boolean isOwner() {
    return identity.hasRole(Role.OWN);
  }

  public boolean isModerator() {
    return identity.hasRole(Role.MODERATE);
  }

  /** The places a person of this role sees, the current one marked. */
  public List<Place> getPlaces() {
    List<Place> places = new ArrayList<>();
    places.add(place("/", "Find settings", "find"));
    places.add(place("/post", "Post a result", "post"));
    places.add(place("/ask", "Ask", "ask"));
    places.add(place("/bench", "My bench", "bench"));
    if (isModerator()) {
      places.add(place("/desk", "Desk", "desk"));
    }
    return places;
  }

  private Place place(String href, String label, String icon) {
    String path = uri.getPath();
    boolean current =
        href.equals("/") ? path.equals("/") : path.equals(href) || path.startsWith(href + "/");
    return new Place(href, label, icon, current);
  }

  /** The program's version, as its build said. */
  public String getVersion() {
    return assets.version();
  }

  public List<String> getStyleSheets() {
    return assets.styleSheets();
  }

  public List<String> getScripts() {
    return assets.scripts();
  }

  /** The address of a script that only one page needs. */
  public String asset(String file) {
    return assets.address(file);
  }
}
