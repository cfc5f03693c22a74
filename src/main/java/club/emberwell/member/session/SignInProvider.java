package club.emberwell.member.session;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.Optional;

/** The club's OpenID Connect provider; without an issuer there is none. */
@ConfigMapping(prefix = "emberwell.sso")
public interface SignInProvider {
  /** Its issuer identifier, e.g. {@code https://login.club.example}; nothing else is called. */
  Optional<String> issuer();

  /** What this server is called there. */
  @WithDefault("emberwell")
  String clientId();

  /** The secret it was given there; without one, PKCE alone proves the server. */
  Optional<String> clientSecret();

  /** What members know the provider by. */
  @WithDefault("single sign-on")
  String label();

  /** How long somebody may take at the provider. */
  @WithDefault("10M")
  Duration patience();

  /** How long the provider may take to answer. */
  @WithDefault("5S")
  Duration timeout();

  /** How far its clock may be off. */
  @WithDefault("60S")
  Duration clockSkew();
}
