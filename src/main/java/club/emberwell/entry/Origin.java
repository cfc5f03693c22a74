package club.emberwell.entry;

/**
 * Where an entry was made.
 *
 * @param address of the club it came from, null = here
 * @param version it had there, null = here
 */
public record Origin(String address, Integer version) {
  public static final Origin HERE = new Origin(null, null);

  /** Invented, to show what a club looks like; never among the data that leave the club. */
  public static final Origin EXAMPLE = new Origin("example", 1);
}
