package club.emberwell.talk.watch;

import java.util.UUID;

/** Where digests go. Whoever sends mail implements it; without that, nothing is mailed. */
public interface WatchMail {
  /** False where this server sends no mail. */
  boolean enabled();

  /** Queues a mail to a member in the caller's transaction; false where none can be sent. */
  boolean queue(UUID member, String subject, String text);

  /** The same for what watches found, which its receiver can end by the mail itself. */
  boolean queueDigest(UUID member, String subject, String text);
}
