package club.emberwell.exchange.open;

/**
 * A file that can be taken along.
 *
 * @param bytes its size
 * @param sha256 its sum, in hexadecimal digits
 */
public record DataFile(String name, long bytes, String sha256) {}
