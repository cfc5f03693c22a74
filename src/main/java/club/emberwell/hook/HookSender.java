package club.emberwell.hook;

import club.emberwell.hook.DeliveryRepository.Claimed;
import club.emberwell.hook.HookAddresses.Refused;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jboss.logging.Logger;

/**
 * Sends what waits in the outbox, a few at a time on threads of its own. Each delivery is claimed
 * for a while, sent, and struck off; a node that dies in between lets another send it again, so one
 * may come twice under the same id but is never lost. Neither address nor secret reaches the log.
 */
@ApplicationScoped
public class HookSender {
  private static final Logger LOG = Logger.getLogger(HookSender.class);
  private static final int GONE = 410;
  private static final int OK = 200;
  private static final int REDIRECTS = 300;

  private final DeliveryRepository deliveries;
  private final WebhookRepository hooks;
  private final HookAddresses addresses;
  private final HookCall call;
  private final HookConfig config;
  private final HookAlarm alarm;
  private final ExecutorService threads;

  HookSender(
      DeliveryRepository deliveries,
      WebhookRepository hooks,
      HookAddresses addresses,
      HookCall call,
      HookConfig config,
      HookAlarm alarm) {
    this.deliveries = deliveries;
    this.hooks = hooks;
    this.addresses = addresses;
    this.call = call;
    this.config = config;
    this.alarm = alarm;
    this.threads =
        Executors.newFixedThreadPool(
            config.atOnce(),
            work -> {
              Thread thread = new Thread(work, "webhooks");
              thread.setDaemon(true);
              return thread;
            });
  }

  @PreDestroy
  void stop() {
    threads.shutdownNow();
  }

  @Scheduled(
      every = "${emberwell.webhooks.every:2s}",
      concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    int sent = config.atOnce();
    while (sent == config.atOnce()) {
      sent = some();
    }
  }

  /**
   * Sends the next few and waits until that is over.
   *
   * @return how many there were
   */
  public int some() {
    List<Claimed> claimed =
        QuarkusTransaction.requiringNew()
            .call(() -> deliveries.claim(config.atOnce(), config.lease()));
    claimed.stream()
        .map(one -> CompletableFuture.runAsync(() -> send(one), threads))
        .toList()
        .forEach(CompletableFuture::join);
    return claimed.size();
  }

  @Scheduled(every = "1h", delayed = "8m")
  void sweep() {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              deliveries.forget(config.keep());
              hooks.forgetOldSecrets();
            });
  }

  private void send(Claimed one) {
    if (!one.told()) {
      QuarkusTransaction.requiringNew()
          .run(() -> deliveries.end(one.number(), Delivery.State.DROPPED, null, null));
      return;
    }
    try {
      int status = call.post(addresses.target(one.url()), headers(one), one.body());
      if (status >= OK && status < REDIRECTS) {
        arrived(one, status);
      } else if (status == GONE) {
        gone(one);
      } else {
        missed(one, status, "The answer was " + status + ".");
      }
    } catch (Refused e) {
      missed(one, null, e.getMessage());
    } catch (IOException e) {
      missed(one, null, "No answer: " + e.getMessage());
    }
  }

  private static Map<String, String> headers(Claimed one) {
    Instant now = Instant.now();
    List<String> secrets = List.of(one.secrets().split(" "));
    String id = one.id().toString();
    Map<String, String> headers = new LinkedHashMap<>();
    headers.put("content-type", "application/json");
    headers.put("user-agent", "Emberwell");
    headers.put("webhook-id", id);
    headers.put("webhook-timestamp", Long.toString(now.getEpochSecond()));
    headers.put("webhook-signature", HookSignature.header(secrets, id, now, one.body()));
    return headers;
  }

  private void arrived(Claimed one, int status) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              hooks.hold(one.webhook());
              deliveries.end(one.number(), Delivery.State.DONE, status, null);
              hooks.arrived(one.webhook());
            });
  }

  private void gone(Claimed one) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              hooks.hold(one.webhook());
              deliveries.end(one.number(), Delivery.State.FAILED, GONE, "The answer was 410.");
              if (hooks.gone(one.webhook())) {
                switchedOff(one, HookState.GONE);
              }
            });
  }

  private void missed(Claimed one, Integer status, String error) {
    String said = error.length() > HookLimits.ERROR ? error.substring(0, HookLimits.ERROR) : error;
    Duration pause = pause(one.tries());
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              hooks.hold(one.webhook());
              if (!deliveries.again(one.number(), status, said, pause, config.giveUpAfter())) {
                deliveries.end(one.number(), Delivery.State.FAILED, status, said);
                LOG.infof("delivery %s to webhook %s is given up", one.id(), one.webhook());
              }
              deliveries.holdBack(one.webhook(), pause);
              if (hooks.missed(one.webhook(), config.offAfter())) {
                switchedOff(one, HookState.FAILED);
              }
            });
  }

  private void switchedOff(Claimed one, HookState why) {
    LOG.warnf("webhook %s is switched off: %s", one.webhook(), why.code());
    deliveries.drop(one.webhook());
    alarm.switchedOff(one.webhook(), why);
  }

  /** Twice as long each time, up to the longest. */
  private Duration pause(int tries) {
    Duration pause = config.firstPause();
    for (int i = 1; i < tries && pause.compareTo(config.longestPause()) < 0; i++) {
      pause = pause.multipliedBy(2);
    }
    return pause.compareTo(config.longestPause()) < 0 ? pause : config.longestPause();
  }
}
