package club.emberwell.entry;

import club.emberwell.member.Licence;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** The row of an entry of any kind. Only {@link EntryLife} changes it. */
@Entity
@Table(name = "entry")
public class EntryEntity {
  @Id private UUID id;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Long number;

  @Enumerated(EnumType.STRING)
  @Column(updatable = false)
  private EntryKind kind;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  @Enumerated(EnumType.STRING)
  private EntryState state;

  private int version;

  @Column(name = "parent_id", updatable = false)
  private UUID parentId;

  private String title;

  @Column(updatable = false)
  private String origin;

  @Column(name = "origin_version", updatable = false)
  private Integer originVersion;

  @Enumerated(EnumType.STRING)
  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Licence licence;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Boolean named;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "updated_at")
  private Instant updatedAt;

  protected EntryEntity() {}

  EntryEntity(NewEntry made, UUID author, EntryState first, String title) {
    id = made.id();
    kind = made.kind();
    memberId = author;
    state = first;
    parentId = made.parent();
    this.title = title;
    origin = made.origin().address();
    originVersion = made.origin().version();
    createdAt = stored(made.at());
    updatedAt = createdAt;
    version = 1;
  }

  /** The next version. */
  void change(EntryState next, String nextTitle, Instant now) {
    state = next;
    title = nextTitle;
    updatedAt = stored(now);
    version++;
  }

  // The database keeps microseconds; what is answered now must equal what is read later.
  private static Instant stored(Instant time) {
    return time.truncatedTo(ChronoUnit.MICROS);
  }

  public UUID id() {
    return id;
  }

  /** Rises with every entry. */
  public long number() {
    return number;
  }

  /** What lists in order of posting are ordered by. */
  public List<?> place() {
    return List.of(createdAt, number);
  }

  public EntryKind kind() {
    return kind;
  }

  public UUID memberId() {
    return memberId;
  }

  public EntryState state() {
    return state;
  }

  public boolean live() {
    return state == EntryState.LIVE;
  }

  public int version() {
    return version;
  }

  public UUID parentId() {
    return parentId;
  }

  public String title() {
    return title;
  }

  public Origin origin() {
    return new Origin(origin, originVersion);
  }

  /** Under which it may be used, as its author chose when it was posted. */
  public Licence licence() {
    return licence;
  }

  public Instant createdAt() {
    return createdAt;
  }

  public Instant updatedAt() {
    return updatedAt;
  }

  /**
   * The same detached.
   *
   * @param handle of its author
   */
  public Entry toEntry(String handle) {
    return new Entry(
        new EntryRef(kind, id),
        state,
        version,
        parentId,
        title,
        new Entry.Author(memberId, handle),
        new Entry.Times(createdAt, updatedAt));
  }
}
