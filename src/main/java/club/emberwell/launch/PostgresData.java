package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/**
 * What the built-in database keeps in its folder: its data, and the password of their owner.
 *
 * @param programs those of PostgreSQL
 * @param account that the data belong to
 */
record PostgresData(Path folder, Path programs, Account account) {
  /** Its name in a home. */
  static final String FOLDER = "postgres";

  private static final Duration TIMEOUT = Duration.ofSeconds(60);

  Path data() {
    return folder.resolve("data");
  }

  /** The password of the owner; made where there is none yet. */
  String password() throws IOException {
    Path file = folder.resolve("password");
    if (!Files.exists(file)) {
      byte[] random = new byte[24];
      new SecureRandom().nextBytes(random);
      Path half = file.resolveSibling("password.new");
      Files.deleteIfExists(half);
      Files.createFile(
          half, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      Files.writeString(half, Base64.getUrlEncoder().withoutPadding().encodeToString(random));
      Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
    }
    return Files.readString(file).trim();
  }

  /**
   * Makes the data unless they are there.
   *
   * @param synced whether they must be on disk when this is done
   * @throws LaunchException where they belong to another version
   */
  void initialise(boolean synced) throws IOException {
    if (Files.exists(data().resolve("PG_VERSION"))) {
      requireSameVersion();
      return;
    }
    Path half = Files.createTempDirectory(folder, "initialising-");
    Path secret = Files.writeString(half.resolve("password"), password());
    account.own(half);
    Path fresh = half.resolve("data");
    List<String> words =
        new ArrayList<>(
            List.of(PostgresBinaries.program(programs, "initdb"), "-D", fresh.toString()));
    words.addAll(
        List.of("-U", EmbeddedPostgres.USER, "-A", "scram-sha-256", "--pwfile", secret.toString()));
    words.addAll(List.of("-E", "UTF8", "--locale=C", "--locale-provider=builtin"));
    words.addAll(List.of("--builtin-locale=C.UTF-8", "--data-checksums"));
    if (!synced) {
      words.add("--no-sync");
    }
    ProgramRun.output(account.command(words), TIMEOUT);
    Files.move(fresh, data(), StandardCopyOption.ATOMIC_MOVE);
    PostgresBinaries.deleteTree(half);
  }

  private void requireSameVersion() throws IOException {
    String written = Files.readString(data().resolve("PG_VERSION")).trim();
    String output =
        ProgramRun.output(
            List.of(PostgresBinaries.program(programs, "postgres"), "--version"), TIMEOUT);
    if (!output.contains(") " + written + ".")) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The data in "
              + data()
              + " belong to PostgreSQL "
              + written
              + ", the built-in one is "
              + output.trim()
              + "; restore a backup into a new home.");
    }
  }
}
