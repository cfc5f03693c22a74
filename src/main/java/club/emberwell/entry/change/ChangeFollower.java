package club.emberwell.entry.change;

import org.jboss.logging.Logger;

/** Leads one reader along the change rows, from its place to the end. */
public final class ChangeFollower {
  private static final Logger LOG = Logger.getLogger(ChangeFollower.class);

  private final ChangeLog log;
  private final ChangeReader reader;
  private volatile String trouble = "";

  public ChangeFollower(ChangeLog log, ChangeReader reader) {
    this.log = log;
    this.reader = reader;
  }

  /**
   * Takes the next changes.
   *
   * @return true where there are more
   */
  public boolean some() {
    return reader.next(log);
  }

  /** Takes all there are. */
  public void all() {
    while (some()) {
      LOG.debugf("more changes wait for %s", reader.name());
    }
  }

  /**
   * Does what belongs to following. The same trouble, which comes again at every call while the
   * database or the disk is away, is said once; the next call begins where the last one ended.
   *
   * @return false where there was trouble
   */
  public boolean attempt(Runnable work) {
    try {
      work.run();
      trouble = "";
      return true;
    } catch (RuntimeException e) {
      String now = e.toString();
      if (!now.equals(trouble)) {
        trouble = now;
        LOG.warnf(e, "%s cannot follow what changed; trying again", reader.name());
      }
      return false;
    }
  }
}
