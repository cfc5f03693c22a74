package club.emberwell.talk;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Something new that a watch found, as it reads now.
 *
 * @param entity {@code report}, {@code question}, {@code notice} or {@code answer}
 * @param entryId of the report or the entry
 * @param title what to call it on a line of its own
 * @param watch what the watch is called; null for an answer to one's own question
 * @param by handle of its author
 * @param question of an answer, else null
 */
public record Find(
    long id,
    String entity,
    UUID entryId,
    String title,
    String watch,
    String by,
    UUID question,
    Instant foundAt,
    boolean read) {

  /** Where a person reads it: a path of this server. */
  public String path() {
    return switch (entity) {
      case "report" -> "/reports/" + entryId;
      case "notice" -> "/notices/" + entryId;
      case "answer" -> TalkEntry.answerPath(question, entryId);
      default -> "/ask/" + entryId;
    };
  }

  /** What it is, as a word on the page. */
  public String kind() {
    return switch (entity) {
      case "report" -> "Result";
      case "notice" -> "Notice";
      case "answer" -> "Answer";
      default -> "Question";
    };
  }

  /** Names a report by what was worked on, how and with what. */
  static String reportTitle(
      String material, String coating, String colour, String process, String source) {
    List<String> work =
        new ArrayList<>(Stream.of(material, coating, colour).filter(word -> word != null).toList());
    String how = Process.valueOf(process).label().toLowerCase(Locale.ROOT);
    return String.join(", ", work) + ": " + how + ", " + LaserSource.valueOf(source).label();
  }
}
