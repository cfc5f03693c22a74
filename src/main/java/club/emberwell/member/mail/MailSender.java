package club.emberwell.member.mail;

import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.mail.MailOutboxRepository.Letter;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import io.vertx.ext.mail.MailMessage;
import io.vertx.ext.mail.mailencoder.EmailAddress;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Sends what waits in the outbox. Each letter is claimed for a while, sent, and struck off; a node
 * that dies in between lets another send it again, so a letter may come twice but is never lost.
 */
@ApplicationScoped
class MailSender {
  private static final Logger LOG = Logger.getLogger(MailSender.class);
  private static final int ERROR_LENGTH = 200;

  /** Whatever a mail server takes for an address, ours or the one it forwards to. */
  private static final Pattern ADDRESS = Pattern.compile("[^\\s<>\"(),:;]+@[^\\s<>\"(),:;]+");

  private final MailOutbox outbox;
  private final MailOutboxRepository rows;
  private final MailConfig config;
  private final ClubOptions club;
  private final MailCarrier carrier;
  private final String publicUrl;

  MailSender(
      MailOutbox outbox,
      MailOutboxRepository rows,
      MailConfig config,
      ClubOptions club,
      MailCarrier carrier,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.outbox = outbox;
    this.rows = rows;
    this.config = config;
    this.club = club;
    this.carrier = carrier;
    this.publicUrl = publicUrl;
  }

  @Scheduled(every = "${emberwell.mail.every:5s}", concurrentExecution = ConcurrentExecution.SKIP)
  void send() {
    if (!outbox.available()) {
      return;
    }
    for (int i = 0; i < config.batch(); i++) {
      Optional<Letter> letter =
          QuarkusTransaction.requiringNew().call(() -> rows.claim(config.lease()));
      if (letter.isEmpty() || !delivered(letter.get())) {
        return;
      }
    }
  }

  @Scheduled(every = "1h", delayed = "7m")
  void sweep() {
    QuarkusTransaction.requiringNew().run(() -> rows.forgetFailed(config.keepFailed()));
  }

  private boolean delivered(Letter letter) {
    try {
      carrier.hand(message(letter));
      QuarkusTransaction.requiringNew().run(() -> rows.sent(letter.id()));
      return true;
    } catch (RuntimeException e) {
      failed(letter, e);
      return false;
    }
  }

  private MailMessage message(Letter letter) {
    String below = "\n\n-- \n" + club.clubName() + "\n" + publicUrl + "\n";
    MailMessage message =
        new MailMessage(sender(), letter.recipient(), letter.subject(), letter.body() + below);
    // said before anything is connected
    new EmailAddress(letter.recipient());
    // RFC 3834: keeps out-of-office replies away
    message.addHeader("Auto-Submitted", "auto-generated");
    message.addHeader("Message-ID", messageId());
    if (letter.unsubscribe() != null) {
      message.addHeader("List-Unsubscribe", "<" + letter.unsubscribe() + ">");
      // RFC 8058: the one press of a mail program
      message.addHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
    }
    return message;
  }

  /** The club's name before the address, unless the operator chose another. */
  private String sender() {
    String address = config.from();
    // what would need quoting is left out: letters and digits of any script tell who writes
    String name = club.clubName().replaceAll("[^\\p{L}\\p{M}\\p{N}'&-]+", " ").strip();
    return address.contains("<") || name.isEmpty() ? address : name + " <" + address + ">";
  }

  /** RFC 5322, 3.6.4: on the right stands a name that is ours. */
  private String messageId() {
    return "<" + UUID.randomUUID() + "@" + carrier.ownName() + ">";
  }

  private void failed(Letter letter, RuntimeException e) {
    String said = reason(e);
    if (letter.tries() >= config.triesMax()) {
      LOG.warnf("letter %d is given up after %d tries: %s", letter.id(), letter.tries(), said);
      QuarkusTransaction.requiringNew().run(() -> rows.giveUp(letter.id(), said));
    } else {
      LOG.infof("letter %d will be tried again: %s", letter.id(), said);
      Duration pause = pause(letter.tries());
      QuarkusTransaction.requiringNew().run(() -> rows.again(letter.id(), said, pause));
    }
  }

  /** Twice as long each time, up to the longest. */
  private Duration pause(int tries) {
    Duration pause = config.firstPause();
    for (int i = 1; i < tries && pause.compareTo(config.longestPause()) < 0; i++) {
      pause = pause.multipliedBy(2);
    }
    return pause.compareTo(config.longestPause()) < 0 ? pause : config.longestPause();
  }

  /** What the mail server said; addresses stay out of the log. */
  private static String reason(Throwable e) {
    Throwable last = e;
    while (last.getCause() != null) {
      last = last.getCause();
    }
    String said = ADDRESS.matcher(String.valueOf(last.getMessage())).replaceAll("(the address)");
    return said.length() > ERROR_LENGTH ? said.substring(0, ERROR_LENGTH) : said;
  }
}
