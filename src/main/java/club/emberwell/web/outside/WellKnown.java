package club.emberwell.web.outside;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Pages;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** What programs look for at the same place everywhere (RFC 8615). */
@Path("/.well-known")
@Blocking
public class WellKnown extends Pages {
  /** Read anew with each request, so it need not hold for long. */
  private static final Duration HOLDS = Duration.ofDays(90);

  private static final String PASSWORD = "/me#password-heading";
  private static final String SIGN_IN_FIRST = "/sign-in?to=/me%23password-heading";

  private final SecurityReports reports;
  private final ClubOptions club;
  private final PublicUrl url;

  WellKnown(SecurityReports reports, ClubOptions club, PublicUrl url) {
    this.reports = reports;
    this.club = club;
    this.url = url;
  }

  /** To whom holes in this server are told (RFC 9116); 404 where the operator named nobody. */
  @GET
  @Path("security.txt")
  @Produces("text/plain;charset=UTF-8")
  @PermitAll
  public String security() {
    List<SecurityReports.Address> contacts =
        reports.contact().orElseThrow(() -> Problems.notFound().exception());
    List<String> lines = new ArrayList<>();
    contacts.forEach(contact -> lines.add("Contact: " + contact.uri()));
    lines.add("Expires: " + Instant.now().truncatedTo(ChronoUnit.DAYS).plus(HOLDS));
    String self = url.of("/.well-known/security.txt");
    if (self.startsWith("https:")) {
      lines.add("Canonical: " + self);
    }
    reports.policy().ifPresent(policy -> lines.add("Policy: " + policy.uri()));
    lines.add("Preferred-Languages: en");
    return String.join("\n", lines) + "\n";
  }

  /** Where a password manager sends its owner (W3C, A Well-Known URL for Changing Passwords). */
  @GET
  @Path("change-password")
  @PermitAll
  public Response changePassword() {
    if (!club.localSignIn()) {
      throw Problems.notFound().exception();
    }
    return to(actor().signedIn() ? PASSWORD : SIGN_IN_FIRST);
  }
}
