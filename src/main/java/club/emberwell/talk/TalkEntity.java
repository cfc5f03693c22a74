package club.emberwell.talk;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryPart;
import club.emberwell.entry.Words;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** What a question, an answer, a notice or a comment has of its own. */
@Entity
@Table(name = "talk")
class TalkEntity extends EntryPart {
  /** Characters of an answer or a comment that lists call it by. */
  private static final int SHORT = 80;

  /** That of the entry once more: lists are read by kind and time from one index. */
  @Enumerated(EnumType.STRING)
  @Column(updatable = false)
  private EntryKind kind;

  private String body;
  private String material;
  private String coating;
  private String source;
  private String process;

  @Column(name = "machine_model")
  private String machineModel;

  @Column(name = "controller_version")
  private String controllerVersion;

  @Column(name = "report_id")
  private UUID reportId;

  @Column(name = "accepted_id")
  private UUID acceptedId;

  private int answers;

  @Column(name = "active_at")
  private Instant activeAt;

  protected TalkEntity() {}

  TalkEntity(EntryEntity entry, WrittenTalk written) {
    super(entry);
    kind = entry().kind();
    activeAt = entry().createdAt();
    take(written);
  }

  /** Takes words that were checked. */
  final void take(WrittenTalk written) {
    body = written.text();
    Ties ties = written.ties();
    material = ties.material();
    coating = ties.coating();
    source = ties.source();
    process = ties.process();
    machineModel = ties.machineModel();
    controllerVersion = ties.controllerVersion();
    reportId = ties.report();
  }

  /** What lists call it and its history keeps. */
  static Words words(WrittenTalk written) {
    String text = written.text();
    String called =
        written.title() != null
            ? written.title()
            : text.substring(0, text.offsetByCodePoints(0, Math.min(SHORT, length(text))));
    return new Words(called, StoredJson.write(written), null);
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }

  void accept(UUID answer) {
    acceptedId = answer;
  }

  /** Nobody's change: what follows from its answers. */
  void count(int live, Instant lastAnswer) {
    answers = live;
    activeAt = lastAnswer == null ? entry().createdAt() : lastAnswer;
  }

  void forget(UUID answer) {
    if (answer.equals(acceptedId)) {
      acceptedId = null;
    }
  }

  UUID acceptedId() {
    return acceptedId;
  }

  WrittenTalk written() {
    Ties ties =
        new Ties(material, coating, source, process, machineModel, controllerVersion, reportId);
    String title = EntryKind.REPLIES.contains(kind) ? null : entry().title();
    return new WrittenTalk(title, body, ties);
  }

  TalkEntry toEntry(String handle) {
    return new TalkEntry(entry().toEntry(handle), written(), acceptedId, answers, activeAt);
  }
}
