package club.emberwell.desk.rule;

import club.emberwell.desk.DeskLimits;
import club.emberwell.entry.Entries;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeFollower;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.StoredReaders;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Holds new and changed entries against the rules, following the change rows: posting never waits
 * for it. One node at a time does it; an entry is noted once by a rule, so a restored one is not
 * held again.
 */
@ApplicationScoped
public class RuleRunner {
  private static final Pattern LINK =
      Pattern.compile("(?i)\\b(https?://|www\\.)\\S|\\[[^\\]]*\\]\\([^)]+\\)");

  private final RuleRepository rules;
  private final Entries entries;
  private final EntryLife life;
  private final ChangeFollower changes;
  private final FarOutside farOutside;

  RuleRunner(
      RuleRepository rules,
      Entries entries,
      EntryLife life,
      StoredReaders readers,
      FarOutside farOutside) {
    this.rules = rules;
    this.entries = entries;
    this.life = life;
    this.changes = readers.following("rules", DeskLimits.RULE_RUN, this::take);
    this.farOutside = farOutside;
  }

  @Scheduled(
      every = "${emberwell.desk.rules-every}",
      concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    changes.attempt(changes::all);
  }

  /**
   * Takes the next changes, in one transaction.
   *
   * @return true where there are more
   */
  public boolean some() {
    return changes.some();
  }

  private void take(List<Change> some) {
    List<Rule> all =
        rules.all().stream().filter(r -> r.on() && r.code() != RuleCode.FIRST_LOOK).toList();
    if (!all.isEmpty()) {
      entries.all(some.stream().map(Change::id).collect(Collectors.toSet())).stream()
          .filter(entry -> entry.kind() != EntryKind.PHOTO)
          .filter(entry -> entry.live() || entry.state() == EntryState.WAITING)
          .sorted(Comparator.comparing(entry -> entry.times().created()))
          .forEach(entry -> check(entry, all));
    }
  }

  private void check(Entry item, List<Rule> all) {
    // a stop of the server shifts no date
    Instant when = item.times().updated();
    for (Rule rule : all) {
      Optional<String> seen = seen(rule, item);
      if (seen.isPresent() && rules.note(rule, item, seen.get(), when) && rule.holds()) {
        life.holdByRule(rule.code().code(), item.ref(), seen.get());
      }
    }
  }

  /** What a rule has to say about an item. */
  private Optional<String> seen(Rule rule, Entry item) {
    return switch (rule.code()) {
      case FIRST_LOOK -> Optional.empty();
      case BURST -> burst(rule, item);
      case REPEATED_TEXT -> repeated(rule, item);
      case NEWCOMER_LINKS -> links(rule, item);
      case FAR_OUTSIDE -> farOutside.seen(rule, item);
    };
  }

  private Optional<String> burst(Rule rule, Entry item) {
    Instant from = item.times().created().minus(Duration.ofMinutes(rule.minutes()));
    long posted = rules.posted(item.author().id(), from, item.times().created());
    return said(
        posted >= rule.threshold(),
        "%d entries within %s.",
        posted,
        words(Duration.ofMinutes(rule.minutes())));
  }

  private Optional<String> repeated(Rule rule, Entry item) {
    Instant from = item.times().created().minus(Duration.ofMinutes(rule.minutes()));
    long times = rules.sameWords(item.ref(), item.author().id(), from, item.times().created());
    return said(
        times >= rule.threshold() && times > 1,
        "The same words %d times within %s.",
        times,
        words(Duration.ofMinutes(rule.minutes())));
  }

  private Optional<String> links(Rule rule, Entry item) {
    if (!LINK.matcher(rules.words(item.ref())).find()) {
      return Optional.empty();
    }
    int needed = (int) Math.ceil(rule.threshold());
    long live = rules.live(item.author().id(), item.id(), needed);
    return said(
        live < rule.threshold(),
        "A link from a member with %s.",
        live == 1 ? "one other entry" : live + " other entries");
  }

  private static Optional<String> said(boolean seen, String sentence, Object... values) {
    return seen ? Optional.of(sentence.formatted(values)) : Optional.empty();
  }

  private static String words(Duration time) {
    return time.toMinutes() % 60 == 0 && time.toMinutes() > 60
        ? String.format(Locale.ROOT, "%d hours", time.toHours())
        : time.toMinutes() + " minutes";
  }
}
