package club.emberwell.search.index;

import java.io.IOException;
import org.apache.lucene.store.AlreadyClosedException;

/** Tells an index whose files are damaged or gone from a fault of ours. */
public final class IndexDamage {
  private static final String LIBRARY = "org.apache.lucene.";

  /** Frames of the JDK that may lie between: a channel, a buffer, a check of bounds. */
  private static final int NEAR = 8;

  private IndexDamage() {}

  /** Looks through all causes. */
  public static boolean is(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof AlreadyClosedException || unread(cause) && byTheLibrary(cause)) {
        return true;
      }
    }
    return false;
  }

  /** What reading broken bytes or a file that became shorter throws. */
  private static boolean unread(Throwable e) {
    return e instanceof IOException
        || e instanceof IndexOutOfBoundsException
        || e instanceof InternalError;
  }

  private static boolean byTheLibrary(Throwable e) {
    StackTraceElement[] at = e.getStackTrace();
    for (int i = 0; i < Math.min(at.length, NEAR); i++) {
      if (at[i].getClassName().startsWith(LIBRARY)) {
        return true;
      }
    }
    return false;
  }
}
