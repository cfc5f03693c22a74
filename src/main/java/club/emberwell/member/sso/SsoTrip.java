package club.emberwell.member.sso;

import club.emberwell.member.Secrets;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.session.SignInProvider;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** What a browser carries to the provider and back: signed, so that it comes back as it went. */
@ApplicationScoped
class SsoTrip {
  private static final String ALGORITHM = "HmacSHA256";
  private static final int LONGEST = 3500;
  private static final int PATH_LENGTH = 500;

  private final ClubOptions club;
  private final ObjectMapper json;
  private final SsoRepository rows;
  private final SignInProvider config;

  SsoTrip(ClubOptions club, ObjectMapper json, SsoRepository rows, SignInProvider config) {
    this.club = club;
    this.json = json;
    this.rows = rows;
    this.config = config;
  }

  /**
   * One trip.
   *
   * @param to where to go afterwards
   * @param invitation a code that was followed before; or null
   * @param member who links the account at the provider to the one here, or confirms; or null
   * @param confirms whether that member only confirms who they are
   * @param until epoch second
   */
  record Ticket(
      String state,
      String nonce,
      String verifier,
      String to,
      String invitation,
      UUID member,
      boolean confirms,
      long until) {}

  /** A ticket for a trip that begins now. */
  Ticket fresh(String to, String invitation, UUID member, boolean confirms) {
    return new Ticket(
        Secrets.random(),
        Secrets.random(),
        Secrets.random(),
        to.length() > PATH_LENGTH ? "/" : to,
        invitation,
        member,
        confirms,
        Instant.now().plus(config.patience()).getEpochSecond());
  }

  /** The ticket of a cookie that fits an answer, which is used up by it. */
  Optional<Ticket> back(String cookie, String state) {
    return read(cookie)
        .filter(ticket -> state != null && same(ticket.state(), state))
        .filter(this::spend);
  }

  private boolean spend(Ticket ticket) {
    return QuarkusTransaction.requiringNew()
        .call(
            () ->
                rows.spend(
                    Secrets.sha256(ticket.state()), config.patience().plus(config.clockSkew())));
  }

  String signed(Ticket ticket) {
    try {
      String body =
          Base64.getUrlEncoder().withoutPadding().encodeToString(json.writeValueAsBytes(ticket));
      return body + "." + signature(body);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The ticket, if it was made here and is not over. */
  private Optional<Ticket> read(String cookie) {
    int dot = cookie == null || cookie.length() > LONGEST ? -1 : cookie.indexOf('.');
    if (dot < 0 || !same(signature(cookie.substring(0, dot)), cookie.substring(dot + 1))) {
      return Optional.empty();
    }
    try {
      Ticket ticket =
          json.readValue(Base64.getUrlDecoder().decode(cookie.substring(0, dot)), Ticket.class);
      return Optional.of(ticket).filter(t -> t.until() > Instant.now().getEpochSecond());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  private String signature(String body) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(club.formKey().getBytes(StandardCharsets.US_ASCII), ALGORITHM));
      // the word before keeps these apart from the form tokens of the same key
      byte[] signed = mac.doFinal(("sso trip " + body).getBytes(StandardCharsets.UTF_8));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(signed);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
