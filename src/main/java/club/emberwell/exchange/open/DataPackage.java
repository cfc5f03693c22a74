package club.emberwell.exchange.open;

import club.emberwell.member.Licence;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * The data as they were made last.
 *
 * @param licences under which its records stand: each record says which
 * @param zip all files in one
 * @param files what is in it
 */
public record DataPackage(
    UUID id,
    Instant madeAt,
    Counts counts,
    List<Licence> licences,
    DataFile zip,
    List<DataFile> files) {
  /** How much is in it. */
  public record Counts(int trials, int reports, int members) {}

  /** The zip file or one of those in it. */
  public Optional<DataFile> file(String name) {
    return Stream.concat(Stream.of(zip), files.stream())
        .filter(file -> file.name().equals(name))
        .findFirst();
  }
}
