package club.emberwell.talk.watch;

import club.emberwell.member.mail.LetterKind;
import club.emberwell.member.mail.Unsubscribing.Unsubscribed;
import club.emberwell.talk.TalkLimits;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** One mail a day with what a member's watches found, from one node at a time. */
@ApplicationScoped
public class WatchDigest {
  private static final int SECONDS = 300;

  private final WatchRepository watches;
  private final WatchHitRepository hits;
  private final WatchMail mail;
  private final String publicUrl;

  WatchDigest(
      WatchRepository watches,
      WatchHitRepository hits,
      WatchMail mail,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.watches = watches;
    this.hits = hits;
    this.mail = mail;
    this.publicUrl = publicUrl;
  }

  @Scheduled(every = "10m", delayed = "2m", concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    sendDue(Instant.now());
  }

  /**
   * Queues the mails that are due, at most {@link TalkLimits#DIGEST_RUN}, in one transaction.
   *
   * @return how many
   */
  public int sendDue(Instant now) {
    if (!mail.enabled()) {
      return 0;
    }
    return QuarkusTransaction.requiringNew()
        .timeout(SECONDS)
        .call(
            () -> {
              if (!watches.claimDigest()) {
                return 0;
              }
              List<UUID> due =
                  watches.digestsDue(now.minus(TalkLimits.DIGEST_EVERY), TalkLimits.DIGEST_RUN);
              due.forEach(member -> send(member, now));
              return due.size();
            });
  }

  private void send(UUID member, Instant now) {
    List<Find> finds = hits.forMail(member, TalkLimits.DIGEST + 1);
    // what cannot be sent yet waits until it can
    if (finds.isEmpty() || mail.queueDigest(member, subject(finds.size()), text(finds))) {
      watches.digestSent(member, now);
    }
  }

  /** Whoever ends the letters by one of them has no watch that sends mail. */
  void unsubscribed(@Observes Unsubscribed ended) {
    if (ended.kind() == LetterKind.WATCH) {
      watches.mailNone(ended.member(), Instant.now());
    }
  }

  private static String subject(int finds) {
    if (finds > TalkLimits.DIGEST) {
      return "Your watches found more than " + TalkLimits.DIGEST + " new entries";
    }
    return "Your watches found " + (finds == 1 ? "1 new entry" : finds + " new entries");
  }

  private String text(List<Find> finds) {
    String list =
        finds.stream().limit(TalkLimits.DIGEST).map(this::text).collect(Collectors.joining("\n"));
    String inbox = finds.size() > TalkLimits.DIGEST ? "There is more in your inbox" : "Your inbox";
    return """
    %1$s
    %2$s: %3$s/inbox
    Which watches send mail is yours to choose: %3$s/watches
    """
        .formatted(list, inbox, publicUrl);
  }

  private String text(Find find) {
    return """
    %s: %s
      by %s, found by %s
      %s%s
    """
        .formatted(find.kind(), find.title(), find.by(), find.watch(), publicUrl, find.path());
  }
}
