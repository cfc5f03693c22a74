package club.emberwell.report.copy;

/** A copy was begun in a history that is over, as after a restore: it has to be taken anew. */
public final class CopyOutdated extends RuntimeException {
  private static final long serialVersionUID = 1L;

  CopyOutdated() {
    super("The club's database was restored since. Take the whole again, without a cursor.");
  }
}
