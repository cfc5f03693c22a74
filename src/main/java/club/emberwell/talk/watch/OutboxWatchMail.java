package club.emberwell.talk.watch;

import club.emberwell.member.mail.LetterKind;
import club.emberwell.member.mail.MailOutbox;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Digests leave by the club's outbox. Members without a proved address read their inbox. */
@ApplicationScoped
class OutboxWatchMail implements WatchMail {
  private final MailOutbox outbox;

  OutboxWatchMail(MailOutbox outbox) {
    this.outbox = outbox;
  }

  @Override
  public boolean enabled() {
    return outbox.available();
  }

  @Override
  public boolean queue(UUID member, String subject, String text) {
    return outbox.queue(member, "desk", subject, text);
  }

  @Override
  public boolean queueDigest(UUID member, String subject, String text) {
    return outbox.queue(member, LetterKind.WATCH, subject, text);
  }
}
