package club.emberwell.room;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.safety.Ventilation.Carried;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.room.WrittenRoom.Size;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads a room as written; pure but for the day it is. */
final class RoomReader {
  private static final double MM3_PER_M3 = 1e9;

  private final FieldReader in;

  private RoomReader(NumberStyle style) {
    in = new FieldReader(style);
  }

  /**
   * What the words mean.
   *
   * @throws EntryRefused with a remark for every field at fault
   */
  static RoomValues read(WrittenRoom w, NumberStyle style) {
    RoomReader reader = new RoomReader(style);
    RoomValues values = reader.values(w);
    Remarks.refuse(reader.in.remarks());
    return values;
  }

  /** What words mean that were stored: what is no longer understood is not said. */
  static RoomValues stored(WrittenRoom w, NumberStyle style) {
    return new RoomReader(style).values(w);
  }

  private RoomValues values(WrittenRoom w) {
    String name = in.text("/name", in.required("/name", w.name()), RoomLimits.NAME, false);
    in.text("/notes", w.notes(), RoomLimits.NOTES, true);
    if (w.machines().size() > RoomLimits.MACHINES) {
      String detail = "At most %d machines fit here.".formatted(RoomLimits.MACHINES);
      in.add(Remark.error(RemarkId.TOO_MANY, "/machines", detail));
    }
    return new RoomValues(
        name,
        size(w.size()),
        air(w.air()),
        checks(w.checks()),
        w.machines().stream().distinct().toList(),
        in.lines("/lines", w.lines(), RoomLimits.LINES, RoomLimits.LINE));
  }

  private Double length(String pointer, WrittenQuantity given, Bounds bounds) {
    return in.quantity(pointer, QuantityKind.LENGTH, given, bounds);
  }

  /** By its volume or by its three sides. */
  private RoomValues.Size size(Size size) {
    Double volume =
        in.quantity("/volume", QuantityKind.VOLUME, size.volume(), RoomLimits.VOLUME_M3);
    if (Stream.of(size.length(), size.width(), size.height()).allMatch(FieldReader::isAbsent)) {
      return new RoomValues.Size(volume, null, null, null);
    }
    if (!FieldReader.isAbsent(size.volume())) {
      String detail = "Give the volume or the three sides, not both.";
      in.add(Remark.error(RemarkId.ROOM_SIZE, "/volume", detail));
    }
    Double length = side("/length", size.length(), RoomLimits.SIDE_MM);
    Double width = side("/width", size.width(), RoomLimits.SIDE_MM);
    Double height = side("/height", size.height(), RoomLimits.SIDE_MM);
    Double product =
        length == null || width == null || height == null
            ? null
            : length * width * height / MM3_PER_M3;
    return new RoomValues.Size(product, length, width, height);
  }

  private Double side(String pointer, WrittenQuantity given, Bounds bounds) {
    if (FieldReader.isAbsent(given)) {
      in.required(pointer, null);
      return null;
    }
    return length(pointer, given, bounds);
  }

  /** An opening has both sides or none. */
  private RoomValues.Air air(WrittenRoom.Air air) {
    boolean open =
        !FieldReader.isAbsent(air.openingWidth()) || !FieldReader.isAbsent(air.openingHeight());
    return new RoomValues.Air(
        in.quantity("/flow", QuantityKind.AIR_FLOW, air.flow(), RoomLimits.FLOW_M3H),
        length("/duct", air.duct(), RoomLimits.DUCT_MM),
        in.choice(
            "/carried",
            air.carried(),
            code -> Coded.of(Carried.class, code.strip()),
            Carried.values(),
            Carried::code),
        open ? side("/openingWidth", air.openingWidth(), RoomLimits.OPENING_MM) : null,
        open ? side("/openingHeight", air.openingHeight(), RoomLimits.OPENING_MM) : null);
  }

  /** All that are here, with what the owner said of them. */
  private List<CheckState> checks(List<WrittenRoom.Check> written) {
    Map<RoomCheck, WrittenRoom.Check> said = new EnumMap<>(RoomCheck.class);
    Map<RoomCheck, String> at = new EnumMap<>(RoomCheck.class);
    for (int i = 0; i < written.size(); i++) {
      String pointer = "/checks/" + i;
      RoomCheck check = check(pointer + "/check", written.get(i).check());
      if (check != null) {
        at.put(check, pointer);
        if (said.put(check, written.get(i)) != null) {
          in.add(Remark.error(RemarkId.VALUE_TWICE, pointer + "/check", "Each check stands once."));
        }
      }
    }
    List<CheckState> states = new ArrayList<>();
    for (RoomCheck check : RoomCheck.values()) {
      WrittenRoom.Check w = said.get(check);
      if (w == null) {
        states.add(new CheckState(check, check.usualDays(), null));
      } else if (!Boolean.FALSE.equals(w.here())) {
        states.add(state(check, w, at.get(check)));
      }
    }
    return states;
  }

  private RoomCheck check(String pointer, String code) {
    return in.choice(
        pointer,
        in.required(pointer, code),
        written -> Coded.of(RoomCheck.class, written.strip()),
        RoomCheck.values(),
        RoomCheck::code);
  }

  private CheckState state(RoomCheck check, WrittenRoom.Check w, String at) {
    Integer days = w.everyDays();
    if (days != null && !check.recurs()) {
      String detail = "A fire watch follows every job; it has no days.";
      in.add(Remark.error(RemarkId.CHECK_INTERVAL, at + "/everyDays", detail));
    } else if (days != null && (days < 1 || days > RoomLimits.MOST_DAYS)) {
      String detail = "From 1 to %,d days.".formatted(RoomLimits.MOST_DAYS);
      in.add(Remark.error(RemarkId.CHECK_INTERVAL, at + "/everyDays", detail));
    }
    return new CheckState(
        check, days == null ? check.usualDays() : days, day(in, at + "/lastOn", w.lastOn()));
  }

  /** A day until today; null where not given or at fault. */
  static LocalDate day(FieldReader in, String pointer, String written) {
    if (written == null || written.isBlank()) {
      return null;
    }
    try {
      LocalDate day = LocalDate.parse(written.strip());
      // a day ahead is today somewhere
      if (day.isBefore(RoomLimits.EARLIEST)
          || day.isAfter(LocalDate.now(ZoneOffset.UTC).plusDays(1))) {
        String detail = "A day from %s to today.".formatted(RoomLimits.EARLIEST);
        in.add(Remark.error(RemarkId.DATE_UNREADABLE, pointer, detail));
        return null;
      }
      return day;
    } catch (DateTimeException e) {
      String detail = "Write the date as year-month-day, such as 2026-09-12.";
      in.add(Remark.error(RemarkId.DATE_UNREADABLE, pointer, detail));
      return null;
    }
  }
}
