package club.emberwell.report.photo;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class PictureTurnsTest {
  private final CountDownLatch open = new CountDownLatch(1);
  private final AtomicInteger atOnce = new AtomicInteger();
  private final AtomicInteger most = new AtomicInteger();
  private PictureTurns turns = new PictureTurns(Stints.limits(Map.of()));

  @AfterEach
  void end() {
    open.countDown();
    turns.stop();
  }

  /** Lasts until the door opens. */
  private String slow(PictureStint stint) {
    most.accumulateAndGet(atOnce.incrementAndGet(), Math::max);
    try {
      assertTrue(open.await(60, TimeUnit.SECONDS));
      return "done";
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    } finally {
      atOnce.decrementAndGet();
    }
  }

  private static void assertBusy(CompletableFuture<?> turn) {
    assertTrue(turn.isCompletedExceptionally(), "it is told at once");
    Throwable told = assertThrows(CompletionException.class, turn::join).getCause();
    assertEquals(Duration.ofSeconds(5), assertInstanceOf(PicturesBusy.class, told).retryAfter());
  }

  @Test
  void oneMemberHasOneAtWorkAndAShareThatWaits() {
    UUID many = UUID.randomUUID();
    List<CompletableFuture<String>> own = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      own.add(turns.ask(many, this::slow));
    }
    assertBusy(turns.ask(many, this::slow));
    CompletableFuture<String> other = turns.ask(UUID.randomUUID(), stint -> "at once");
    assertEquals("at once", other.orTimeout(20, TimeUnit.SECONDS).join());
    assertEquals(1, most.get());
    open.countDown();
    own.forEach(turn -> assertEquals("done", turn.orTimeout(20, TimeUnit.SECONDS).join()));
    assertEquals("again", turns.now(many, stint -> "again"));
  }

  @Test
  void noMoreWorkThanThereAreThreadsAndNoMoreWaitThanMay() {
    List<CompletableFuture<String>> all = new ArrayList<>();
    for (int i = 0; i < 2 + 12; i++) {
      all.add(turns.ask(UUID.randomUUID(), this::slow));
    }
    assertBusy(turns.ask(UUID.randomUUID(), this::slow));
    assertBusy(turns.ask(null, this::slow));
    // a thread that only starts now would find the other done with everything
    await().atMost(20, TimeUnit.SECONDS).until(() -> atOnce.get() == 2);
    open.countDown();
    all.forEach(turn -> assertEquals("done", turn.orTimeout(20, TimeUnit.SECONDS).join()));
    assertEquals(2, most.get());
  }

  @Test
  void whatWaitsTooLongIsToldSo() {
    turns.stop();
    turns = new PictureTurns(Stints.limits(Map.of("queued", "0.2S")));
    UUID member = UUID.randomUUID();
    turns.ask(member, this::slow);
    CompletableFuture<String> second = turns.ask(member, this::slow);
    await().atMost(20, TimeUnit.SECONDS).until(second::isDone);
    assertBusy(second);
  }

  @Test
  void whoGoesAwayLeavesTheQueueAndStopsTheWork() {
    UUID member = UUID.randomUUID();
    CountDownLatch begun = new CountDownLatch(1);
    AtomicInteger ended = new AtomicInteger();
    CompletableFuture<Void> first =
        turns.ask(
            member,
            stint -> {
              begun.countDown();
              try {
                while (true) {
                  stint.check();
                  Thread.onSpinWait();
                }
              } finally {
                ended.incrementAndGet();
              }
            });
    CompletableFuture<String> second = turns.ask(member, this::slow);
    await().atMost(20, TimeUnit.SECONDS).until(() -> begun.getCount() == 0);
    assertFalse(second.isDone());
    second.cancel(false);
    first.cancel(false);
    await().atMost(20, TimeUnit.SECONDS).until(() -> ended.get() == 1);
    assertEquals("free", turns.now(member, stint -> "free"));
  }

  @Test
  void aRequestThatWaitsItselfHasADeadline() {
    turns.stop();
    turns = new PictureTurns(Stints.limits(Map.of("own", "0.2S")));
    assertThrows(PicturesBusy.class, () -> turns.now(UUID.randomUUID(), this::slow));
  }

  @Test
  void whatGoesWrongIsToldToWhoAsked() {
    assertThrows(
        PictureRefused.class,
        () ->
            turns.now(
                null,
                stint -> {
                  throw PictureRefused.unreadable();
                }));
    assertThrows(
        PicturesBusy.class,
        () ->
            turns.now(
                null,
                stint -> {
                  throw new OutOfMemoryError("for a test");
                }));
  }

  @Test
  void memoryIsGivenOutOnce() throws InterruptedException {
    PictureMemory memory = new PictureMemory(100 << 20);
    PictureMemory.Held first = memory.hold(70 << 20, Duration.ZERO);
    assertTrue(memory.hold(40 << 20, Duration.ZERO) == null, "30 MB are left");
    first.giveBack();
    // more than there is goes alone
    assertTrue(memory.hold(900 << 20, Duration.ZERO) != null);
  }
}
