package club.emberwell.exchange.bench;

import club.emberwell.entry.EntryAccess;
import club.emberwell.member.Actor;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/** The copy that a member sent on a page, while they look at what would become of it; one each. */
@ApplicationScoped
public class SentBench {
  private static final int PART = 1_048_576;

  private final SentBenchRepository rows;
  private final CopyLimits limits;

  SentBench(SentBenchRepository rows, CopyLimits limits) {
    this.rows = rows;
    this.limits = limits;
  }

  /** Keeps a file in the place of the one before; answers under which id. */
  @Transactional
  public UUID keep(Actor actor, Path file) {
    UUID member = EntryAccess.signedIn(actor);
    UUID id = UUID.randomUUID();
    rows.forget(member);
    rows.begin(member, id, Instant.now());
    try (InputStream in = Files.newInputStream(file)) {
      int part = 0;
      for (byte[] some = in.readNBytes(PART); some.length > 0; some = in.readNBytes(PART)) {
        rows.add(id, part++, some);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return id;
  }

  /** The actor's own as a file, to be deleted by whoever asked; empty where it is gone. */
  @Transactional
  public Optional<Path> file(Actor actor, UUID id) {
    if (id == null || !rows.isOf(EntryAccess.signedIn(actor), id)) {
      return Optional.empty();
    }
    try {
      Path file = Files.createTempFile("emberwell-sent-bench-", ".zip");
      try (OutputStream out = Files.newOutputStream(file)) {
        Optional<byte[]> some = rows.part(id, 0);
        for (int part = 1; some.isPresent(); part++) {
          out.write(some.get());
          some = rows.part(id, part);
        }
      }
      return Optional.of(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Transactional
  public void forget(Actor actor) {
    rows.forget(EntryAccess.signedIn(actor));
  }

  /** Forgets what nobody came back for. */
  @Scheduled(every = "1h", delayed = "11m")
  public void forgetOld() {
    forgetOlder(Instant.now().minus(limits.kept()));
  }

  /**
   * The same of those sent before a time.
   *
   * @return how many
   */
  @Transactional
  public int forgetOlder(Instant than) {
    return rows.forgetOlder(than);
  }
}
