package club.emberwell.hook;

import club.emberwell.entry.change.ChangeFollower;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.StoredReaders;
import club.emberwell.hook.ChangeNewsRepository.News;
import club.emberwell.hook.WebhookRepository.Listening;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Puts what happened into the outbox of the webhooks that want it, following the change rows. One
 * node at a time does it, in one transaction with the place it has reached.
 */
@ApplicationScoped
public class HookMatcher {
  private final WebhookRepository hooks;
  private final DeliveryRepository deliveries;
  private final ChangeNewsRepository changed;
  private final HookWords words;
  private final HookConfig config;
  private final ChangeFollower changes;

  HookMatcher(
      WebhookRepository hooks,
      DeliveryRepository deliveries,
      ChangeNewsRepository changed,
      HookWords words,
      HookConfig config,
      StoredReaders readers) {
    this.hooks = hooks;
    this.deliveries = deliveries;
    this.changed = changed;
    this.words = words;
    this.config = config;
    this.changes = readers.following("webhooks", HookLimits.RUN, this::take);
  }

  @Scheduled(
      every = "${emberwell.webhooks.every:2s}",
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
    List<Listening> listening = hooks.listening();
    if (listening.isEmpty()) {
      return;
    }
    List<News> news =
        changed.of(some.stream().map(change -> change.position().seq()).toList()).stream()
            .filter(HookMatcher::isSo)
            .toList();
    Map<Long, String> bodies = new HashMap<>();
    for (Listening hook : listening) {
      Set<String> wanted = Set.of(hook.events());
      List<News> told =
          news.stream()
              .filter(n -> wanted.contains(n.event().code()) && !n.at().isBefore(hook.createdAt()))
              .toList();
      tell(hook, told, bodies);
    }
  }

  /** Whether it still is as the change row says: what was held meanwhile is not told. */
  private static boolean isSo(News news) {
    boolean shown = news.about() != null && news.about().shown();
    return switch (news.event()) {
      case RESULT_WITHDRAWN -> !shown;
      case DESK_WAITING -> news.about() != null && !shown;
      case DESK_FLAGGED -> news.about() != null && news.reason() != null;
      case DESK_NOTED -> news.about() != null;
      default -> shown || !news.event().shows();
    };
  }

  private void tell(Listening hook, List<News> told, Map<Long, String> bodies) {
    int room = (int) Math.max(0, config.queue() - hook.waiting());
    List<DeliveryRepository.New> all = new ArrayList<>();
    for (News news : told.subList(0, Math.min(room, told.size()))) {
      String body = bodies.computeIfAbsent(news.seq(), seq -> words.body(news));
      all.add(words.delivery(hook.id(), news, body));
    }
    deliveries.add(all);
    if (told.size() > room) {
      hooks.leftOut(hook.id(), told.size() - room);
    }
  }
}
