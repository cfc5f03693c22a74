package club.emberwell.lot;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.Words;
import club.emberwell.lot.WrittenLot.Blank;
import club.emberwell.lot.WrittenLot.Counts;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** What a lot has of its own. */
@Entity
@Table(name = "lot")
class LotEntity {
  /** Stands for a day of which nobody knows. */
  static final LocalDate LONG_AGO = LocalDate.of(1, 1, 1);

  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  private String supplier;

  /** The same for spellings that differ by case and space alone. */
  @Generated(event = {EventType.INSERT, EventType.UPDATE})
  @Column(name = "supplier_code", insertable = false, updatable = false)
  private String supplierCode;

  private String batch;
  private String material;
  private String coating;
  private String colour;
  private int received;
  private Integer usable;
  private Integer burned;

  @Column(name = "received_on")
  private LocalDate receivedOn;

  private String inspection;
  private String notes;
  private boolean shared;

  protected LotEntity() {}

  LotEntity(EntryEntity entry, WrittenLot written) {
    this.entry = entry;
    take(written);
  }

  /** Takes words that were checked. */
  final void take(WrittenLot written) {
    supplier = written.supplier();
    batch = written.batch();
    material = written.blank().material();
    coating = written.blank().coating();
    colour = written.blank().colour();
    received = written.counts().received();
    usable = written.counts().usable();
    burned = written.counts().burned();
    receivedOn = written.date() == null ? null : LocalDate.parse(written.date());
    inspection = written.inspection();
    notes = written.notes();
    shared = written.shared();
  }

  /** "Steel tumbler, powder coat, navy, from North Blanks". */
  static Words words(WrittenLot written) {
    Blank blank = written.blank();
    String pieces =
        Stream.of(blank.material(), blank.coating(), blank.colour())
            .filter(Objects::nonNull)
            .collect(Collectors.joining(", "));
    return new Words(pieces + ", from " + written.supplier(), StoredJson.write(written), null);
  }

  /** What lists of lots are ordered by: when it was received, long ago where nobody said. */
  List<?> place() {
    return List.of(receivedOn == null ? LONG_AGO : receivedOn, entry.createdAt(), entry.number());
  }

  EntryEntity entry() {
    return entry;
  }

  WrittenLot written() {
    return new WrittenLot(
        supplier,
        batch,
        new Blank(material, coating, colour),
        new Counts(received, usable, burned),
        receivedOn == null ? null : receivedOn.toString(),
        inspection,
        notes,
        shared);
  }

  Lot toLot(String handle) {
    return new Lot(entry.toEntry(handle), supplierCode, written());
  }
}
