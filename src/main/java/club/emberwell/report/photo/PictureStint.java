package club.emberwell.report.photo;

import club.emberwell.report.photo.PictureRefused.Fault;
import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.concurrent.CancellationException;

/**
 * One turn of a thread that makes pictures ready: how long it lasts, what memory there is, and
 * whether anybody still waits for what comes of it. Decoders ask it again and again ({@link
 * WatchedPicture}); it stops them by an exception in their own thread, as those of JDK 17 refuse to
 * be aborted from another one.
 */
final class PictureStint {
  private final PictureLimits limits;
  private final PictureMemory memory;
  private final long end;
  private volatile boolean left;
  private long processorEnd = Long.MAX_VALUE;
  private long allocationEnd = Long.MAX_VALUE;

  /** Begins now. */
  PictureStint(PictureLimits limits, PictureMemory memory) {
    this.limits = limits;
    this.memory = memory;
    end = System.nanoTime() + limits.work().toNanos();
  }

  /** Nobody waits any more. */
  void leave() {
    left = true;
  }

  /** The next picture begins. */
  void begin() {
    processorEnd = processor() + limits.processor().toNanos();
    allocationEnd = Long.MAX_VALUE;
    check();
  }

  /** Tells how much memory may be taken from now on, where that does not follow from the header. */
  void allow(long bytes) {
    allocationEnd = allocated() + bytes;
  }

  private static long processor() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** By this thread since it began; 0 on a machine that does not count it. */
  private static long allocated() {
    return ManagementFactory.getThreadMXBean() instanceof ThreadMXBean counting
        ? counting.getCurrentThreadAllocatedBytes()
        : 0;
  }

  /**
   * Goes on, or not.
   *
   * @throws PictureRefused where the picture costs too much
   * @throws PicturesBusy where the machine has too much to do for it
   */
  void check() {
    if (left) {
      throw new CancellationException("whoever sent the picture has gone");
    }
    // time of the processor: on a machine that is busy with others a picture may take longer
    if (processor() > processorEnd) {
      throw new PictureRefused(
          Fault.TOO_COSTLY,
          "This picture takes too long to read. Save it again as an ordinary JPEG.");
    }
    if (allocated() > allocationEnd) {
      throw new PictureRefused(
          Fault.TOO_COSTLY,
          "This picture takes too much memory to read. Save it again as an ordinary JPEG.");
    }
    if (System.nanoTime() > end) {
      throw busy();
    }
  }

  /** The most memory that one picture can have, bytes. */
  long mostMemory() {
    return memory.most();
  }

  /** What takes a lot of memory. */
  interface Decoding<T> {
    T done() throws IOException;
  }

  /** Does something once so much memory is free for it. */
  <T> T within(long bytes, Decoding<T> decoding) throws IOException {
    PictureMemory.Held held = hold(bytes);
    try {
      return decoding.done();
    } finally {
      held.giveBack();
    }
  }

  private PictureMemory.Held hold(long bytes) {
    try {
      PictureMemory.Held held = memory.hold(bytes, Duration.ofNanos(end - System.nanoTime()));
      if (held == null) {
        throw busy();
      }
      return held;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException("the server stops");
    }
  }

  private PicturesBusy busy() {
    return new PicturesBusy(PictureTurns.BUSY, limits.again());
  }
}
