package club.emberwell.api.talk;

import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.Ties;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/**
 * An entry as answered.
 *
 * @param text Markdown as written
 * @param html what may be shown of it
 * @param question the question an answer belongs to
 * @param accepted of a question: the answer that helped
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TalkJson(
    UUID id,
    String kind,
    int version,
    String state,
    String member,
    UUID question,
    String title,
    String text,
    String html,
    @JsonInclude(JsonInclude.Include.NON_NULL) TiesJson ties,
    UUID accepted,
    Integer answers,
    Instant activeAt,
    Instant createdAt,
    Instant updatedAt) {

  /** What it is about; parts that are not there are left out. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record TiesJson(
      String material,
      String coating,
      String source,
      String process,
      String machineModel,
      String controllerVersion,
      UUID report) {
    static TiesJson of(Ties ties) {
      return new TiesJson(
          ties.material(),
          ties.coating(),
          ties.source(),
          ties.process(),
          ties.machineModel(),
          ties.controllerVersion(),
          ties.report());
    }
  }

  static TalkJson of(TalkEntry entry) {
    boolean asks = entry.kind() == TalkKind.QUESTION;
    boolean answers = entry.kind() == TalkKind.ANSWER;
    return new TalkJson(
        entry.id(),
        entry.kind().code(),
        entry.version(),
        entry.state().name().toLowerCase(Locale.ROOT),
        entry.memberHandle(),
        entry.question(),
        entry.written().title(),
        entry.written().text(),
        entry.html().getMarkup(),
        answers ? null : TiesJson.of(entry.written().ties()),
        entry.accepted(),
        asks ? entry.answers() : null,
        asks ? entry.activeAt() : null,
        entry.createdAt(),
        entry.updatedAt());
  }

  static List<TalkJson> all(List<TalkEntry> entries) {
    return entries.stream().map(TalkJson::of).toList();
  }
}
