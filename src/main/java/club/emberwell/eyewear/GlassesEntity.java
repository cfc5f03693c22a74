package club.emberwell.eyewear;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.Words;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.util.UUID;

/** What a pair of glasses has of its own. */
@Entity
@Table(name = "eyewear")
class GlassesEntity {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  private String name;
  private String marking;
  private String notes;

  protected GlassesEntity() {}

  GlassesEntity(EntryEntity entry, WrittenGlasses written) {
    this.entry = entry;
    take(written);
  }

  /** Takes words that were checked. */
  final void take(WrittenGlasses written) {
    name = written.name();
    marking = written.marking();
    notes = written.notes();
  }

  static Words words(WrittenGlasses written) {
    return new Words(written.name(), StoredJson.write(written), null);
  }

  EntryEntity entry() {
    return entry;
  }

  WrittenGlasses written() {
    return new WrittenGlasses(name, marking, notes);
  }

  Glasses toGlasses(String handle) {
    return new Glasses(
        entry.toEntry(handle),
        written(),
        GlassesReader.printed(marking),
        GlassesReader.remarks(marking));
  }
}
