package club.emberwell.keep;

import club.emberwell.keep.KeepRefused.Why;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Files of a home that cannot be made again.
 *
 * @param places where each lies, by its name in archives
 */
public record HomeFiles(Map<String, Path> places) {

  /** Puts those of an archive in their places; one that is there and differs is set aside. */
  public void bringBack(Archive archive, Consumer<String> progress) {
    for (Manifest.HomeFile kept : archive.manifest().files()) {
      Path place = places.get(kept.name());
      if (place == null) {
        progress.accept(kept.name() + ": left out, nothing here is called so");
        continue;
      }
      try {
        bringBack(archive, kept, place, progress);
      } catch (IOException e) {
        throw new KeepRefused(
            Why.FILE,
            "The club is back, but not its file "
                + place
                + " ("
                + e
                + "); take it out of the"
                + " backup by hand.",
            e);
      }
    }
  }

  private static void bringBack(
      Archive archive, Manifest.HomeFile kept, Path place, Consumer<String> progress)
      throws IOException {
    byte[] bytes;
    try (InputStream in = archive.open(kept)) {
      bytes = in.readAllBytes();
    }
    if (Files.exists(place)) {
      if (Arrays.equals(Files.readAllBytes(place), bytes)) {
        return;
      }
      Path aside = place.resolveSibling(place.getFileName() + ".replaced");
      Files.move(place, aside, StandardCopyOption.REPLACE_EXISTING);
      progress.accept("What was in " + place + " is now in " + aside);
    }
    Path half = place.resolveSibling(place.getFileName() + ".half");
    Files.deleteIfExists(half);
    Files.createFile(
        half, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    Files.write(half, bytes);
    Files.move(half, place, StandardCopyOption.ATOMIC_MOVE);
    progress.accept(place + " is back");
  }
}
