package club.emberwell.report.photo;

import club.emberwell.member.Actor;
import club.emberwell.report.ReportLimits;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;

/**
 * Makes uploads ready for keeping: decoded, in our sizes and encoded anew. Nobody's thread waits;
 * what comes of it is told when it is there. All of it fails with {@link PicturesBusy} where too
 * much waits already.
 */
@ApplicationScoped
public class ReadyPhotos {
  private final PictureTurns turns;

  ReadyPhotos(PictureTurns turns) {
    this.turns = turns;
  }

  /**
   * What came of one file.
   *
   * @param ready null where it was refused
   * @param refused or why it was
   */
  public record Outcome(Photos.Ready ready, PictureRefused refused) {
    /**
     * What can be kept.
     *
     * @throws PictureRefused where it is no picture we take
     */
    public Photos.Ready kept() {
      if (refused != null) {
        throw refused;
      }
      return ready;
    }
  }

  /**
   * Of several files that came together, in their order.
   *
   * @param files read only when it is their turn, so that what waits takes no memory
   */
  public CompletableFuture<Map<Path, Outcome>> of(Actor actor, List<Path> files) {
    if (files.isEmpty()) {
      return CompletableFuture.completedFuture(Map.of());
    }
    return turns.ask(
        actor.memberId(),
        stint -> {
          Map<Path, Outcome> all = new LinkedHashMap<>();
          for (Path file : files) {
            all.put(file, outcome(file, stint));
          }
          return all;
        });
  }

  /** Of one; fails with {@link PictureRefused} where it is no picture we take. */
  public CompletableFuture<Photos.Ready> of(Actor actor, Path file) {
    return turns.ask(actor.memberId(), stint -> outcome(file, stint).kept());
  }

  private static Outcome outcome(Path file, PictureStint stint) throws IOException {
    try {
      if (Files.size(file) > ReportLimits.PHOTO_UPLOAD) {
        throw PictureRefused.tooBig();
      }
      byte[] upload = Files.readAllBytes(file);
      return new Outcome(new Photos.Ready(PictureCleaner.clean(upload, stint)), null);
    } catch (PictureRefused e) {
      return new Outcome(null, e);
    }
  }

  /**
   * One of our own pictures made ready once more, for another place.
   *
   * @throws PicturesBusy where too much waits
   */
  public Photos.Ready again(Actor actor, byte[] ours) {
    return turns.now(actor.memberId(), stint -> new Photos.Ready(PictureCleaner.again(ours)));
  }

  /** What is done with one of our own pictures while a request waits for it. */
  public interface Own<T> {
    T done() throws IOException;
  }

  /**
   * Does something with our own pictures that takes a while.
   *
   * @throws PicturesBusy where too much waits
   */
  public <T> T worked(Actor actor, Own<T> own) {
    return turns.now(actor.memberId(), stint -> own.done());
  }
}
