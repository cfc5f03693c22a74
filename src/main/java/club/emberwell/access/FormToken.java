package club.emberwell.access;

import club.emberwell.member.club.ClubOptions;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Proves that a form was ours: a hidden field signed over a cookie only we can set.
 *
 * <p>Own code instead of quarkus-rest-csrf, because there the signing key is a configuration value
 * and not the club's, the cookie has one fixed name and so cannot be {@code __Host-} on HTTPS and
 * plain on loopback, it is handed out on API answers too and runs out after two hours under an open
 * form, a body in any other format is either waved through or refused for the JSON API as well, and
 * a refusal is a bare 400 in which everything typed is lost.
 */
@Named("csrf")
@RequestScoped
public class FormToken {
  static final String FIELD = "form-token";
  static final String HEADER = "X-Form-Token";
  private static final String COOKIE = "emberwell-form";
  private static final String ALGORITHM = "HmacSHA256";
  private static final int BYTES = 16;
  private static final int LONGEST = 200;
  private static final SecureRandom RANDOM = new SecureRandom();

  private final RoutingContext request;
  private final SessionCookie cookies;
  private final ClubOptions club;
  private String browser;

  FormToken(RoutingContext request, SessionCookie cookies, ClubOptions club) {
    this.request = request;
    this.cookies = cookies;
    this.club = club;
  }

  /** The name of the hidden field. */
  public String getParameterName() {
    return FIELD;
  }

  /** A token for one form. Fresh each time, so that compressed pages do not give it away. */
  public String getToken() {
    if (browser == null) {
      browser = cookies.read(request, COOKIE).orElseGet(this::introduce);
    }
    String salt = random();
    return salt + "." + signature(browser, salt);
  }

  /** Whether a token was made here for this browser. */
  boolean fits(String token) {
    String known = cookies.read(request, COOKIE).orElse(null);
    if (known == null || token == null || token.length() > LONGEST) {
      return false;
    }
    int dot = token.indexOf('.');
    return dot > 0
        && MessageDigest.isEqual(
            signature(known, token.substring(0, dot)).getBytes(StandardCharsets.US_ASCII),
            token.substring(dot + 1).getBytes(StandardCharsets.UTF_8));
  }

  private String introduce() {
    String name = random();
    request.response().addCookie(cookies.cookie(request, COOKIE, name));
    return name;
  }

  private String signature(String of, String salt) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(club.formKey().getBytes(StandardCharsets.US_ASCII), ALGORITHM));
      byte[] signed = mac.doFinal((of + "." + salt).getBytes(StandardCharsets.UTF_8));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(signed);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
