package club.emberwell.room;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.Words;
import club.emberwell.quantity.NumberStyle;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Converter;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;

/** What a room has of its own. */
@Entity
@Table(name = "room")
class RoomEntity {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

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

  RoomEntity(EntryEntity entry, WrittenRoom written, NumberStyle style, RoomValues values) {
    this.entry = entry;
    take(written, style, values);
  }

  /** Takes words that were read. */
  final void take(WrittenRoom from, NumberStyle style, RoomValues values) {
    written = from;
    numberStyle = style;
    name = values.name();
    checks.clear();
    values.checks().stream().map(CheckColumns::of).forEach(checks::add);
  }

  static Words words(WrittenRoom written, RoomValues values) {
    return new Words(values.name(), StoredJson.write(written), null);
  }

  EntryEntity entry() {
    return entry;
  }

  WrittenRoom written() {
    return written;
  }

  NumberStyle numberStyle() {
    return numberStyle;
  }

  Room toRoom(String handle) {
    return new Room(entry.toEntry(handle), written, RoomReader.stored(written, numberStyle));
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
