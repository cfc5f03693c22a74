package club.emberwell.member.mail;

import io.vertx.core.Vertx;
import io.vertx.ext.mail.MailClient;
import io.vertx.ext.mail.MailMessage;
import io.vertx.ext.mail.StartTLSOptions;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URI;
import java.time.Duration;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Hands letters to the mail server, each over a connection of its own: letters are few, and the
 * client's pool now and then gives out a connection that is just being closed.
 */
@ApplicationScoped
class MailCarrier {
  private final Vertx vertx;
  private final MailConfig config;
  private final String ownName;

  MailCarrier(
      Vertx vertx,
      MailConfig config,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.vertx = vertx;
    this.config = config;
    this.ownName = URI.create(publicUrl).getHost();
  }

  /** RFC 5321, 4.1.1.1: a name that leads back to this server, not the machine's own. */
  String ownName() {
    return ownName;
  }

  /**
   * Returns once the mail server has taken the letter.
   *
   * @throws RuntimeException if it did not within {@link MailConfig#timeout()}
   */
  void hand(MailMessage letter) {
    Duration timeout = config.timeout();
    MailClient client = MailClient.create(vertx, options());
    try {
      client
          .sendMail(letter)
          .toCompletionStage()
          .toCompletableFuture()
          .orTimeout(timeout.toMillis(), TimeUnit.MILLISECONDS)
          .join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof TimeoutException) {
        throw new IllegalStateException("no answer within " + timeout.toSeconds() + " s");
      }
      throw new IllegalStateException("not handed over", e.getCause());
    } finally {
      client.close();
    }
  }

  private io.vertx.ext.mail.MailConfig options() {
    io.vertx.ext.mail.MailConfig options = new io.vertx.ext.mail.MailConfig();
    options.setHostname(config.host().orElseThrow()).setPort(config.port());
    options.setOwnHostname(ownName);
    options.setStarttls(StartTLSOptions.valueOf(config.startTls().name()));
    options.setSsl(config.tls());
    // RFC 2818, 3.1: a certificate of another name is none
    options.setHostnameVerificationAlgorithm("HTTPS");
    int timeout = Math.toIntExact(config.timeout().toMillis());
    options.setConnectTimeout(timeout);
    // a server that never answers keeps no connection, whoever gave up first
    options.setIdleTimeout(timeout).setIdleTimeoutUnit(TimeUnit.MILLISECONDS);
    config.user().ifPresent(options::setUsername);
    config.password().ifPresent(options::setPassword);
    return options;
  }
}
