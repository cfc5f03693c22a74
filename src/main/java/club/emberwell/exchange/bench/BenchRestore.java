package club.emberwell.exchange.bench;

import club.emberwell.entry.EntryAccess;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.jboss.logging.Logger;

/**
 * Restores a copy of a bench, or tells what would become of it. All things come in one transaction,
 * so where it breaks off nothing was written; photos follow one by one. The same copy again finds
 * what is there already and goes on with what is missing.
 */
@ApplicationScoped
public class BenchRestore {
  private static final Logger LOG = Logger.getLogger(BenchRestore.class);

  private final ReturningThings things;
  private final ReturningPhotos photos;
  private final CopyTurns turns;
  private final CopyLimits limits;

  BenchRestore(ReturningThings things, ReturningPhotos photos, CopyTurns turns, CopyLimits limits) {
    this.things = things;
    this.photos = photos;
    this.turns = turns;
    this.limits = limits;
  }

  /** Ends what was only looked at: nothing of it stays. */
  private static final class Looked extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Looked() {
      super("looked at", null, false, false);
    }
  }

  /**
   * Reads a copy by a thread of its own.
   *
   * @param preview true: tells what would become of it and writes nothing
   * @return fails with {@link CopyRefused}, or with {@link CopiesBusy}
   */
  public CompletableFuture<CopyOutcome> of(Actor actor, Path file, boolean preview) {
    EntryAccess.signedIn(actor);
    return turns.ask(actor.memberId(), () -> now(actor, file, preview));
  }

  /** The same by the thread that asks, for the command line. */
  public CopyOutcome now(Actor actor, Path file, boolean preview) {
    UUID member = EntryAccess.signedIn(actor);
    try (CopyFile copy = CopyFile.open(file, limits)) {
      ReturningThings.Returning run = things.begin(actor, member, copy);
      write(run, preview);
      CopyOutcome.Photos pictures =
          preview ? photos.look(copy, run.pictures()) : photos.bring(actor, copy, run.pictures());
      return new CopyOutcome(
          preview,
          said(copy.said().savedAt()),
          said(copy.said().member()),
          List.copyOf(run.done()),
          pictures);
    } catch (IOException e) {
      throw new CopyRefused("This copy cannot be read to its end. Nothing was restored.");
    }
  }

  private void write(ReturningThings.Returning run, boolean preview) {
    try {
      QuarkusTransaction.requiringNew()
          .timeout(limits.seconds())
          .run(
              () -> {
                run.all();
                if (preview) {
                  throw new Looked();
                }
              });
    } catch (Looked e) {
      // it was rolled back, as was meant
    } catch (EntryRefused e) {
      throw e;
    } catch (RuntimeException e) {
      // whatever a forged copy made somebody stumble over
      LOG.warn("a copy of a bench could not be restored", e);
      throw new CopyRefused(
          "This copy holds something that this server cannot read. Nothing was restored.");
    }
  }

  /** Somebody's words, for people. */
  private static String said(String text) {
    return text == null ? "" : text.substring(0, Math.min(text.length(), 60));
  }
}
