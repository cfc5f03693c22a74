package club.emberwell.lot.supplier;

/** Every limit of what is told of suppliers. */
public final class SupplierLimits {
  /**
   * Members who share lots of a supplier before anything is told of it: with one the numbers are
   * that member's own, with two each could take the other's from the sum.
   */
  public static final int FEWEST_MEMBERS = 3;

  /** Suppliers on one page of the list. */
  public static final int PAGE = 30;

  /** Suppliers a form offers to choose from, the first by rank; others are named by their page. */
  public static final int OFFERED = 200;

  /** Lots of one supplier that are shown, the last received. */
  public static final int LOTS = 300;

  private SupplierLimits() {}
}
