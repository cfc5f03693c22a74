package club.emberwell.exchange.example;

/**
 * The example as an owner sees it.
 *
 * @param done while it comes or goes: so many parts, of {@code total}
 * @param kept what removing it would do to what real members wrote
 */
public record Example(ExampleState state, int done, int total, Invented invented, Beside kept) {
  /** What of it is here. */
  public record Invented(long members, long reports, long talk) {}

  /**
   * What real members wrote that hangs on something invented.
   *
   * @param answers to invented questions; they stay
   * @param repeats of invented reports; they stay as reports of their own
   * @param comments under invented reports; they go with those
   */
  public record Beside(long answers, long repeats, long comments) {
    /** Whether there is anything of the kind. */
    public boolean any() {
      return answers + repeats + comments > 0;
    }
  }

  /** Whether it comes or goes right now. */
  public boolean moving() {
    return state == ExampleState.LOADING || state == ExampleState.REMOVING;
  }

  /** In percent. */
  public int share() {
    return total == 0 ? 0 : (int) (100L * done / total);
  }
}
