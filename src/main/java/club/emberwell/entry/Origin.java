package club.emberwell.entry;

/**
 * Where an entry was made.
 *
 * @param address of the club it came from, null = here
 * @param version it had there, null = here
 */
public record Origin(String address, Integer version) {
  public static final Origin HERE = new Origin(null, null);
}
