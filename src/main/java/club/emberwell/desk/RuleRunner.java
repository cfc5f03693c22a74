package club.emberwell.desk;

import club.emberwell.desk.RuleRepository.Progress;
import club.emberwell.report.ChangeLog;
import club.emberwell.report.ChangeLog.Change;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jboss.logging.Logger;

/**
 * Holds new and changed entries against the rules, following the change rows: posting never waits
 * for it. One node at a time does it; an entry is noted once by a rule, so a restored one is not
 * held again.
 */
@ApplicationScoped
public class RuleRunner {
  private static final Logger LOG = Logger.getLogger(RuleRunner.class);
  private static final Pattern LINK =
      Pattern.compile("(?i)\\b(https?://|www\\.)\\S|\\[[^\\]]*\\]\\([^)]+\\)");

  private final RuleRepository rules;
  private final Decisions decisions;
  private final ChangeLog changes;
  private final FarOutside farOutside;
  private final ItemRepository items;
  private boolean troubled;

  RuleRunner(
      RuleRepository rules,
      ItemRepository items,
      Decisions decisions,
      ChangeLog changes,
      FarOutside farOutside) {
    this.rules = rules;
    this.items = items;
    this.decisions = decisions;
    this.changes = changes;
    this.farOutside = farOutside;
  }

  @Scheduled(
      every = "${emberwell.desk.rules-every}",
      concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    try {
      while (some()) {
        LOG.debug("more changes wait for the rules");
      }
      troubled = false;
    } catch (RuntimeException e) {
      // said once per outage; the next run begins where the last one ended
      if (!troubled) {
        LOG.warn("rules cannot be applied: " + e.getMessage());
      }
      troubled = true;
    }
  }

  /**
   * Takes the next changes, in one transaction.
   *
   * @return true where there are more
   */
  public boolean some() {
    return QuarkusTransaction.requiringNew().call(this::next);
  }

  private boolean next() {
    Progress progress = rules.claim().orElse(null);
    if (progress == null) {
      return false;
    }
    if (!changes.epoch().equals(progress.epoch())) {
      // what was posted before this club had rules, or before a restore, is left alone
      rules.save(changes.epoch(), changes.head());
      return false;
    }
    List<Change> some = changes.since(progress.position(), DeskLimits.RULE_RUN);
    if (some.isEmpty()) {
      return false;
    }
    List<Rule> all =
        rules.all().stream().filter(r -> r.on() && r.code() != RuleCode.FIRST_LOOK).toList();
    if (!all.isEmpty()) {
      some.stream()
          .map(RuleRunner::ref)
          .flatMap(Optional::stream)
          .distinct()
          .forEach(ref -> check(ref, all));
    }
    rules.save(progress.epoch(), some.get(some.size() - 1).position());
    return some.size() == DeskLimits.RULE_RUN;
  }

  private static Optional<ItemRef> ref(Change change) {
    return ItemKind.of(change.entity()).map(kind -> new ItemRef(kind, change.id()));
  }

  private void check(ItemRef ref, List<Rule> all) {
    Item item = items.find(ref).orElse(null);
    boolean stands =
        item != null && (item.state().equals("LIVE") || item.state().equals("WAITING"));
    if (!stands) {
      return;
    }
    Instant now = Instant.now();
    for (Rule rule : all) {
      Optional<String> seen = seen(rule, item);
      if (seen.isPresent()
          && rules.note(rule.code(), item, seen.get(), rule.mode(), now)
          && rule.holds()) {
        decisions.byRule(rule.code(), ref, Action.HOLD, seen.get());
      }
    }
  }

  /** What a rule has to say about an item. */
  private Optional<String> seen(Rule rule, Item item) {
    return switch (rule.code()) {
      case FIRST_LOOK -> Optional.empty();
      case BURST -> burst(rule, item);
      case REPEATED_TEXT -> repeated(rule, item);
      case NEWCOMER_LINKS -> links(rule, item);
      case FAR_OUTSIDE -> farOutside.seen(rule, item);
    };
  }

  private Optional<String> burst(Rule rule, Item item) {
    Instant from = item.createdAt().minus(Duration.ofMinutes(rule.minutes()));
    long posted = rules.posted(item.author(), from, item.createdAt());
    return said(
        posted >= rule.threshold(),
        "%d entries within %s.",
        posted,
        words(Duration.ofMinutes(rule.minutes())));
  }

  private Optional<String> repeated(Rule rule, Item item) {
    Instant from = item.createdAt().minus(Duration.ofMinutes(rule.minutes()));
    long times = rules.sameWords(item.ref(), item.author(), from, item.createdAt());
    return said(
        times >= rule.threshold() && times > 1,
        "The same words %d times within %s.",
        times,
        words(Duration.ofMinutes(rule.minutes())));
  }

  private Optional<String> links(Rule rule, Item item) {
    if (!LINK.matcher(rules.words(item.ref())).find()) {
      return Optional.empty();
    }
    int needed = (int) Math.ceil(rule.threshold());
    long live = rules.live(item.author(), item.ref().id(), needed);
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
