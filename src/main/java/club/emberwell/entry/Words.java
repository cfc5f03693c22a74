package club.emberwell.entry;

/**
 * What an entry says, as its life keeps it.
 *
 * @param title what lists call it
 * @param written the words as stored JSON
 * @param interpreted what was read from them as stored JSON, or null
 */
public record Words(String title, String written, String interpreted) {}
