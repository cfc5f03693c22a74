package club.emberwell.talk;

import club.emberwell.report.Origin;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** The row of a question, an answer or a notice. */
@Entity
@Table(name = "talk_entry")
class TalkEntryEntity {
  @Id private UUID id;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Long number;

  @Enumerated(EnumType.STRING)
  @Column(updatable = false)
  private TalkKind kind;

  private int version;

  @Enumerated(EnumType.STRING)
  private TalkState state;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  private String origin;

  @Column(name = "origin_version")
  private Integer originVersion;

  @Column(name = "question_id", updatable = false)
  private UUID questionId;

  private String title;
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

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "updated_at")
  private Instant updatedAt;

  protected TalkEntryEntity() {}

  TalkEntryEntity(
      UUID id, TalkKind kind, UUID memberId, UUID questionId, Origin origin, Instant createdAt) {
    this.id = id;
    this.kind = kind;
    this.memberId = memberId;
    this.questionId = questionId;
    this.origin = origin.address();
    this.originVersion = origin.version();
    this.createdAt = createdAt;
    this.activeAt = createdAt;
  }

  /** The first state is set without counting as a change. */
  void begin(TalkState first) {
    state = first;
  }

  /** Takes words that were checked; the version goes up by one. */
  void take(WrittenTalk written, Instant now) {
    title = written.title();
    body = written.text();
    Ties ties = written.ties();
    material = ties.material();
    coating = ties.coating();
    source = ties.source();
    process = ties.process();
    machineModel = ties.machineModel();
    controllerVersion = ties.controllerVersion();
    reportId = ties.report();
    touch(now);
  }

  void enter(TalkState next, Instant now) {
    state = next;
    touch(now);
  }

  void accept(UUID answer, Instant now) {
    acceptedId = answer;
    touch(now);
  }

  /** Nobody's change: what follows from its answers. */
  void count(int live, Instant lastAnswer) {
    answers = live;
    activeAt = lastAnswer == null ? createdAt : lastAnswer;
  }

  void forget(UUID answer) {
    if (answer.equals(acceptedId)) {
      acceptedId = null;
    }
  }

  private void touch(Instant now) {
    updatedAt = now;
    version++;
  }

  UUID id() {
    return id;
  }

  TalkKind kind() {
    return kind;
  }

  int version() {
    return version;
  }

  TalkState state() {
    return state;
  }

  UUID memberId() {
    return memberId;
  }

  UUID questionId() {
    return questionId;
  }

  UUID acceptedId() {
    return acceptedId;
  }

  WrittenTalk written() {
    Ties ties =
        new Ties(material, coating, source, process, machineModel, controllerVersion, reportId);
    return new WrittenTalk(title, body, ties);
  }

  TalkEntry toEntry(String handle) {
    return new TalkEntry(
        id,
        number,
        kind,
        version,
        state,
        memberId,
        handle,
        questionId,
        written(),
        acceptedId,
        answers,
        activeAt,
        createdAt,
        updatedAt);
  }
}
