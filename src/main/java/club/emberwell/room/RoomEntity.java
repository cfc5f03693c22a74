package club.emberwell.room;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.own.OwnRow;
import club.emberwell.quantity.NumberStyle;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Converter;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.List;
import org.hibernate.annotations.ColumnTransformer;

/** What a room has of its own. */
@Entity
@Table(name = "room")
class RoomEntity extends OwnRow<ReadRoom, Room> {
  private String name;

  @Convert(converter = AsJson.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenRoom written;

  @Column(name = "number_style")
  private NumberStyle numberStyle;

  @ElementCollection
  @CollectionTable(name = "room_check", joinColumns = @JoinColumn(name = "room_id"))
  private List<CheckColumns> checks = new ArrayList<>();

  protected RoomEntity() {}

  RoomEntity(EntryEntity entry, ReadRoom read) {
    super(entry);
    take(read);
  }

  @Override
  protected final void take(ReadRoom read) {
    written = read.written();
    numberStyle = read.style();
    name = read.values().name();
    checks.clear();
    read.values().checks().stream().map(CheckColumns::of).forEach(checks::add);
  }

  @Override
  protected boolean says(ReadRoom read) {
    return StoredJson.write(written).equals(StoredJson.write(read.written()));
  }

  WrittenRoom written() {
    return written;
  }

  @Override
  protected NumberStyle numberStyle() {
    return numberStyle;
  }

  @Override
  protected Room detached(String handle) {
    return new Room(entry().toEntry(handle), written, RoomReader.stored(written, numberStyle));
  }

  /** A room as written, as JSON in the database. */
  @Converter
  static class AsJson implements AttributeConverter<WrittenRoom, String> {
    @Override
    public String convertToDatabaseColumn(WrittenRoom written) {
      return written == null ? null : StoredJson.write(written);
    }

    @Override
    public WrittenRoom convertToEntityAttribute(String json) {
      return json == null ? null : StoredJson.read(json, new TypeReference<WrittenRoom>() {});
    }
  }
}
