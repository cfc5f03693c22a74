package club.emberwell.api.room;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.safety.Ventilation;
import club.emberwell.laser.safety.Ventilation.Carried;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.room.Room;
import club.emberwell.room.RoomAir;
import club.emberwell.room.RoomValues;
import club.emberwell.room.WrittenRoom;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A room with what was typed, and what follows from it.
 *
 * @param machines ids of one's own that stand in it
 * @param air what follows from size and flow
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record WorkroomJson(
    UUID id,
    int version,
    EntryState state,
    @JsonUnwrapped Said said,
    @JsonUnwrapped Moved moved,
    List<CheckJson> checks,
    AirJson air,
    @JsonUnwrapped Times times) {
  /**
   * What it is.
   *
   * @param volume as said, or of its sides
   * @param lines of one's own, to go through before each job here
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Said(
      String name,
      @Nullable QuantityJson volume,
      @Nullable QuantityJson length,
      @Nullable QuantityJson width,
      @Nullable QuantityJson height,
      List<UUID> machines,
      List<String> lines,
      @Nullable String notes) {
    static Said of(Room room) {
      RoomValues.Size size = room.values().size();
      WrittenRoom.Size w = room.written().size();
      return new Said(
          room.name(),
          QuantityJson.of(QuantityKind.VOLUME, size.volumeM3(), w.volume()),
          QuantityJson.of(QuantityKind.LENGTH, size.lengthMm(), w.length()),
          QuantityJson.of(QuantityKind.LENGTH, size.widthMm(), w.width()),
          QuantityJson.of(QuantityKind.LENGTH, size.heightMm(), w.height()),
          room.values().machines(),
          room.values().lines(),
          room.written().notes());
    }
  }

  /**
   * What moves its air.
   *
   * @param flow that leaves the building
   * @param duct inside diameter
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Moved(
      @Nullable QuantityJson flow,
      @Nullable QuantityJson duct,
      @Nullable Carried carried,
      @Nullable QuantityJson openingWidth,
      @Nullable QuantityJson openingHeight) {
    static Moved of(Room room) {
      RoomValues.Air air = room.values().air();
      WrittenRoom.Air w = room.written().air();
      return new Moved(
          QuantityJson.of(QuantityKind.AIR_FLOW, air.flowM3h(), w.flow()),
          QuantityJson.of(QuantityKind.LENGTH, air.ductMm(), w.duct()),
          air.carried(),
          QuantityJson.of(QuantityKind.LENGTH, air.openingWidthMm(), w.openingWidth()),
          QuantityJson.of(QuantityKind.LENGTH, air.openingHeightMm(), w.openingHeight()));
    }
  }

  /**
   * What follows; left out where something is not said.
   *
   * @param ductSpeed air speed in the duct
   * @param airChanges per hour
   * @param purge90 time until 90 % of what was in the air is gone
   * @param purge99 the same for 99 %
   * @param makeUp flow that must come in again
   * @param openingSpeed air speed where it does
   * @param lidWait time to keep the lid closed after cutting acrylic, at least
   * @param closing always true of it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record AirJson(
      @Nullable QuantityJson ductSpeed,
      @Nullable BigDecimal airChanges,
      @Nullable QuantityJson purge90,
      @Nullable QuantityJson purge99,
      @Nullable QuantityJson makeUp,
      @Nullable QuantityJson openingSpeed,
      QuantityJson lidWait,
      String closing) {
    static AirJson of(RoomValues room) {
      RoomAir air = RoomAir.of(room);
      return new AirJson(
          QuantityJson.of("m/s", air.ductMs()),
          QuantityJson.number(air.changesPerHour()),
          QuantityJson.of("min", air.purge90Minutes()),
          QuantityJson.of("min", air.purge99Minutes()),
          QuantityJson.of(QuantityKind.AIR_FLOW, room.air().flowM3h()),
          QuantityJson.of("m/s", air.openingMs()),
          QuantityJson.of("min", (double) Ventilation.ACRYLIC_MINUTES),
          Ventilation.CLOSING);
    }
  }

  static WorkroomJson of(Room room) {
    Entry.Times at = room.entry().times();
    return new WorkroomJson(
        room.id(),
        room.version(),
        room.entry().state(),
        Said.of(room),
        Moved.of(room),
        room.values().checks().stream().map(CheckJson::of).toList(),
        AirJson.of(room.values()),
        new Times(at.created(), at.updated()));
  }
}
