package club.emberwell.member.mail;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.Optional;

/** The club's mail; without a host nothing is ever sent, and all works without it. */
@ConfigMapping(prefix = "emberwell.mail")
public interface MailConfig {
  /** The SMTP server. */
  Optional<String> host();

  @WithDefault("587")
  int port();

  /** The sender everybody sees. */
  @WithDefault("emberwell@localhost")
  String from();

  Optional<String> user();

  Optional<String> password();

  /** Whether a connection that begins in plain text goes on in TLS. */
  enum StartTls {
    REQUIRED,
    OPTIONAL,
    DISABLED
  }

  @WithDefault("REQUIRED")
  StartTls startTls();

  /** TLS from the first byte. */
  @WithDefault("false")
  boolean tls();

  /** How often a node looks whether something is to be sent. */
  @WithDefault("5s")
  String every();

  /** Letters a node sends at one look. */
  @WithDefault("50")
  int batch();

  /** How long one try may take before another node may try. */
  @WithDefault("5M")
  Duration lease();

  /** How long a mail server may take for one letter. */
  @WithDefault("10S")
  Duration timeout();

  /** The pause before the second try; each next one is twice as long. */
  @WithDefault("1M")
  Duration firstPause();

  @WithDefault("6H")
  Duration longestPause();

  @WithDefault("12")
  int triesMax();

  /** How long letters that could not be sent are kept for the operator to see. */
  @WithDefault("14D")
  Duration keepFailed();
}
