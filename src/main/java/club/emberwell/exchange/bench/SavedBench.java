package club.emberwell.exchange.bench;

import club.emberwell.entry.EntryKind;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** When members last saved their bench, and whether it changed since. */
@ApplicationScoped
public class SavedBench {
  private static final List<String> KINDS =
      Stream.of(BenchKind.values()).flatMap(k -> k.entry().stream()).map(EntryKind::code).toList();

  private final SavedBenchRepository rows;

  SavedBench(SavedBenchRepository rows) {
    this.rows = rows;
  }

  /**
   * How a bench stands to its last copy.
   *
   * @param savedAt null = never saved
   * @param changed whether something on it is newer than that copy; never on an empty bench
   */
  public record Standing(Instant savedAt, boolean changed) {}

  @Transactional
  public Standing of(Actor actor) {
    if (!actor.signedIn()) {
      return new Standing(null, false);
    }
    SavedBenchRepository.Row row = rows.of(actor.memberId(), KINDS);
    boolean changed =
        row.things() > 0 && (row.savedAt() == null || row.changedAt().isAfter(row.savedAt()));
    return new Standing(row.savedAt(), changed);
  }

  @Transactional(Transactional.TxType.MANDATORY)
  void note(UUID member, Instant at) {
    rows.note(member, at);
  }
}
