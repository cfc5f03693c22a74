package club.emberwell.talk.watch;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.time.Instant;
import java.util.Locale;
import java.util.UUID;

/**
 * Something new that a watch found, as it reads now.
 *
 * @param parent the question of an answer, else null
 * @param title what to call it on a line of its own
 * @param by handle of its author
 * @param watch what the watch is called; null for an answer to one's own question
 */
public record Find(
    long id,
    EntryRef ref,
    UUID parent,
    String title,
    String by,
    String watch,
    Instant foundAt,
    boolean read) {

  /** {@code report}, {@code question}, {@code notice} or {@code answer}. */
  public String entity() {
    return ref.kind().code();
  }

  public UUID entryId() {
    return ref.id();
  }

  /** Where a person reads it: a path of this server. */
  public String path() {
    return ref.kind().path(ref.id(), parent);
  }

  /** What it is, as a word on the page. */
  public String kind() {
    return ref.kind() == EntryKind.REPORT ? "Result" : ref.kind().label();
  }

  /** Names a report by what was worked on, how and with what. */
  static String reportTitle(String work, String process, String source) {
    String how = Process.of(process).orElseThrow().label().toLowerCase(Locale.ROOT);
    return work + ": " + how + ", " + LaserSource.of(source).orElseThrow().label();
  }
}
