package club.emberwell.eyewear;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.own.OwnRow;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** What a pair of glasses has of its own. */
@Entity
@Table(name = "eyewear")
class GlassesEntity extends OwnRow<WrittenGlasses, Glasses> {
  private String name;
  private String marking;
  private String notes;

  protected GlassesEntity() {}

  GlassesEntity(EntryEntity entry, WrittenGlasses written) {
    super(entry);
    take(written);
  }

  @Override
  protected final void take(WrittenGlasses written) {
    name = written.name();
    marking = written.marking();
    notes = written.notes();
  }

  @Override
  protected boolean says(WrittenGlasses read) {
    return written().equals(read);
  }

  private WrittenGlasses written() {
    return new WrittenGlasses(name, marking, notes);
  }

  @Override
  protected Glasses detached(String handle) {
    return new Glasses(
        entry().toEntry(handle),
        written(),
        GlassesReader.printed(marking),
        GlassesReader.remarks(marking));
  }
}
