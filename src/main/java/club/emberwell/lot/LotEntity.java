package club.emberwell.lot;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.own.OwnRow;
import club.emberwell.lot.WrittenLot.Blank;
import club.emberwell.lot.WrittenLot.Counts;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import org.hibernate.annotations.Formula;

/** What a lot has of its own. */
@Entity
@Table(name = "lot")
class LotEntity extends OwnRow<WrittenLot, Lot> {
  /** Stands for a day of which nobody knows. */
  static final LocalDate LONG_AGO = LocalDate.of(1, 1, 1);

  private String supplier;

  /** Of the supplier whose spelling it is; for statements, which find it as it is by then. */
  @Formula(
      """
      coalesce((select s.head_code from supplier_spelling s where s.code = supplier_code),
        supplier_code)""")
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
    super(entry);
    take(written);
  }

  @Override
  protected final void take(WrittenLot written) {
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

  @Override
  protected boolean says(WrittenLot read) {
    return written().equals(read);
  }

  /** What lists of lots are ordered by: when it was received, long ago where nobody said. */
  List<?> place() {
    return List.of(
        receivedOn == null ? LONG_AGO : receivedOn, entry().createdAt(), entry().number());
  }

  private WrittenLot written() {
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

  @Override
  protected Lot detached(String handle) {
    return new Lot(entry().toEntry(handle), written());
  }
}
