package club.emberwell.hook;

/** Limits of webhooks. */
public final class HookLimits {
  /** Webhooks of a club. */
  public static final int HOOKS = 20;

  public static final int LABEL = 80;
  public static final int URL = 500;

  /** Deliveries on a page. */
  public static final int PAGE = 20;

  /** Change rows read in one transaction. */
  static final int RUN = 200;

  /** Characters kept of what went wrong. */
  static final int ERROR = 200;

  private HookLimits() {}
}
