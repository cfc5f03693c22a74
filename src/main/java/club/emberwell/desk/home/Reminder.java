package club.emberwell.desk.home;

import club.emberwell.desk.DeskConfig;
import club.emberwell.desk.rule.RuleRepository;
import club.emberwell.talk.watch.WatchMail;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/** Tells how long the oldest thing waits: as a number for monitoring, and by mail when too long. */
@ApplicationScoped
public class Reminder {
  private final DeskRepository desk;
  private final RuleRepository progress;
  private final PeopleRepository people;
  private final WatchMail mail;
  private final DeskConfig config;
  private final AtomicLong seconds = new AtomicLong();

  Reminder(
      DeskRepository desk,
      RuleRepository progress,
      PeopleRepository people,
      WatchMail mail,
      DeskConfig config,
      MeterRegistry meters) {
    this.desk = desk;
    this.progress = progress;
    this.people = people;
    this.mail = mail;
    this.config = config;
    meters.gauge("emberwell.desk.oldest.seconds", seconds);
  }

  @Scheduled(every = "1m", delayed = "30s")
  void look() {
    QuarkusTransaction.requiringNew().run(() -> remind(Instant.now()));
  }

  /** Reminds every moderator once per period while something waits too long; how many letters. */
  int remind(Instant now) {
    Instant oldest = desk.oldest();
    Duration age = oldest == null ? Duration.ZERO : Duration.between(oldest, now);
    seconds.set(age.toSeconds());
    boolean due =
        age.compareTo(config.remindAfter()) > 0
            && progress.remind(now, now.minus(config.remindEvery()));
    int letters = 0;
    if (due && mail.enabled()) {
      for (UUID moderator : people.inCharge()) {
        String text =
            "An item has been waiting at the desk for "
                + DeskHome.said(age)
                + ". Members are waiting for an answer.";
        mail.queue(moderator, "Items are waiting at the desk", text);
        letters++;
      }
    }
    return letters;
  }
}
