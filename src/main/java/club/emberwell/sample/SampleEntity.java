package club.emberwell.sample;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import club.emberwell.entry.Words;
import club.emberwell.tag.TagCode;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;

/** What a sample has of its own. */
@Entity
@Table(name = "sample")
class SampleEntity extends EntryPart {
  @Column(name = "report_id")
  private UUID reportId;

  @Column(name = "grid_id")
  private UUID gridId;

  private String what;
  private String box;
  private String place;
  private String notes;

  protected SampleEntity() {}

  SampleEntity(EntryEntity entry, WrittenSample written) {
    super(entry);
    take(written);
  }

  /** Takes words that were checked. */
  final void take(WrittenSample written) {
    reportId = written.report();
    gridId = written.grid();
    what = written.what();
    box = written.box();
    place = written.place();
    notes = written.notes();
  }

  static Words words(String title, WrittenSample written) {
    return new Words(title, StoredJson.write(written), null);
  }

  WrittenSample written() {
    return new WrittenSample(reportId, gridId, what, box, place, notes);
  }

  Sample toSample(String handle, TagCode tag) {
    return new Sample(entry().toEntry(handle), tag, written());
  }
}
