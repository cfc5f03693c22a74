package club.emberwell.launch;

import club.emberwell.keep.Archive;
import club.emberwell.keep.Backup;
import club.emberwell.keep.DatabaseLogin;
import club.emberwell.keep.Erased;
import club.emberwell.keep.ErasedFile;
import club.emberwell.keep.HomeFiles;
import club.emberwell.keep.KeepRefused;
import club.emberwell.keep.KeepRefused.Why;
import club.emberwell.keep.Restore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** Backups made and brought back from the command line, without any tool of the machine. */
final class Keeping {
  private static final Duration PATIENCE = Duration.ofSeconds(15);

  private final Given given;
  private final Path home;
  private final Consumer<String> progress;

  /**
   * Backups of the club in a home.
   *
   * @param given the settings, with those of the home
   * @param progress is told what is done, line by line
   */
  Keeping(Given given, Path home, Consumer<String> progress) {
    this.given = given;
    this.home = home;
    this.progress = progress;
  }

  /**
   * Makes a backup, whether the server runs or not.
   *
   * @param place a folder, or the file to write; null: the home's own folder
   */
  Backup.Done backup(Path place) {
    try (ClubDatabase club = ClubDatabase.of(given, home).answering()) {
      Backup backup = of(club.database().kept());
      if (place == null) {
        return backup.into(folder());
      }
      boolean file = place.toString().endsWith(".zip") && !Files.isDirectory(place);
      return file ? backup.to(place) : backup.into(place);
    }
  }

  /** Brings a club back in the place of what is there. */
  void restore(Path file, boolean replace, boolean endTokens, boolean holdMail) {
    try (Archive archive = Archive.open(file);
        ClubDatabase club = ClubDatabase.alone(given, home).answering()) {
      DatabaseLogin database = club.database().kept();
      Restore restore =
          new Restore(database, new Restore.Wishes(endTokens, holdMail, erased()), progress);
      restore.requireNoServer();
      if (restore.isClubThere()) {
        if (!replace) {
          throw new KeepRefused(
              Why.NOT_EMPTY,
              "A club is in this database; to put the backup in its place say --replace, which"
                  + " first makes a backup of it. Nothing was changed.");
        }
        progress.accept("What is there is kept first:");
        progress.accept("Kept in " + of(database).into(folder()).file());
      }
      restore.from(archive);
      mark(club.database());
      new HomeFiles(files()).bringBack(archive, progress);
    }
  }

  /** The home belongs to the club that came back; a backup of before there were marks has none. */
  private void mark(Database database) {
    Optional<UUID> ofHome = ClubMark.inHome(home).map(ClubMark::club);
    try (Connection connection = database.connect(PATIENCE)) {
      Optional<UUID> restored = ClubMark.in(connection);
      if (ofHome.isPresent() && restored.isPresent() && !restored.equals(ofHome)) {
        ClubMark.forget(home);
        progress.accept("The home now belongs to the club " + restored.get());
      }
    } catch (SQLException | IOException e) {
      throw new KeepRefused(
          Why.FILE,
          "The club is back, but the home cannot be marked as its own ("
              + e.getMessage()
              + "): start the server with --as-new.",
          e);
    }
  }

  /** Tries whether a backup can be brought back, and leaves nothing behind. */
  void verify(Path file, boolean quick) {
    try (Archive archive = Archive.open(file)) {
      progress.accept("All sums are right.");
      if (!quick) {
        rehearse(archive);
      }
    }
  }

  /**
   * Moves the club from the built-in database to another one, which must be empty.
   *
   * @return where the old database lies now
   */
  Path move(Database target, boolean holdMail) {
    if (!ClubDatabase.isBuiltInThere(home)) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "No built-in database is in the home " + home + "; name another with --home.");
    }
    target.requireAnswer();
    Restore restore =
        new Restore(target.kept(), new Restore.Wishes(false, holdMail, erased()), progress);
    restore.requireNoServer();
    if (restore.isClubThere()) {
      throw new KeepRefused(
          Why.NOT_EMPTY, "A club is in " + target.url() + " already; nothing was changed.");
    }
    try (ClubDatabase club = ClubDatabase.builtIn(home)) {
      Path file = of(club.database().kept()).into(folder()).file();
      progress.accept("Kept in " + file);
      try (Archive archive = Archive.open(file)) {
        restore.from(archive);
      }
    }
    return setAside();
  }

  /** So that no start goes on with what is the past now. */
  private Path setAside() {
    Path folder = home.resolve("postgres");
    Path aside = home.resolve("postgres.moved");
    try {
      return Files.move(folder, aside);
    } catch (IOException e) {
      throw new KeepRefused(
          Why.FILE,
          "The club has moved, but "
              + folder
              + " cannot be renamed to "
              + aside
              + ": do it by hand.",
          e);
    }
  }

  private void rehearse(Archive archive) {
    boolean club = Database.configured(given).isPresent() || ClubDatabase.isBuiltInThere(home);
    Path folder = club ? home : temporary();
    try (ClubDatabase there = ClubDatabase.orNew(given, folder).answering()) {
      new Restore(there.database().kept(), new Restore.Wishes(false, false, List.of()), progress)
          .rehearse(archive);
    } finally {
      if (!club) {
        delete(folder);
      }
    }
  }

  private static Path temporary() {
    try {
      return Files.createTempDirectory("emberwell-verify-");
    } catch (IOException e) {
      throw new KeepRefused(Why.FILE, "No place to try the backup in: " + e + ".", e);
    }
  }

  private static void delete(Path folder) {
    try {
      PostgresBinaries.deleteTree(folder);
    } catch (IOException e) {
      throw new KeepRefused(Why.FILE, folder + " cannot be taken away: " + e + ".", e);
    }
  }

  /** A backup of this database, with the files of this home. */
  Backup of(DatabaseLogin database) {
    return new Backup(database, Main.Version.number(), files(), progress);
  }

  /** Where backups are written unless a place is named. */
  Path folder() {
    return path("emberwell.backup.dir");
  }

  private Map<String, Path> files() {
    return Map.of("data-signing-key.pem", path("emberwell.data.signing-key"));
  }

  private Path path(String setting) {
    return Path.of(given.valueOrDefault(setting).replace("${emberwell.home}", home.toString()));
  }

  private List<Erased> erased() {
    ErasedFile file = ErasedFile.of(home);
    try {
      return file.all();
    } catch (IOException e) {
      throw new KeepRefused(
          Why.FILE,
          "Who left the club cannot be read from " + file.file() + " (" + e.getMessage() + ").",
          e);
    }
  }
}
