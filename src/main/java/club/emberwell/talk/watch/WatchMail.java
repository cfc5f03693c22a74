package club.emberwell.talk.watch;

import java.util.UUID;

/** Where digests go. Whoever sends mail implements it; without that, nothing is mailed. */
public interface WatchMail {
  /** False where this server sends no mail. */
  boolean enabled();

  /** Queues a mail to a member in the caller's transaction. */
  void queue(UUID member, String subject, String text);
}
