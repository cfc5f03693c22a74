package club.emberwell.room;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.room.WrittenRoom.Air;
import club.emberwell.room.WrittenRoom.Check;
import club.emberwell.room.WrittenRoom.Size;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rooms as people write them, what follows for their air, and when their checks are due. */
class RoomReaderTest {
  private static WrittenRoom room(String volume, List<String> sides, String flow, String duct) {
    return new WrittenRoom(
        "Shed",
        new Size(q(volume), q(sides.get(0)), q(sides.get(1)), q(sides.get(2))),
        new Air(q(flow), q(duct), "vapour-gas-smoke", q("300 mm"), q("20 cm")),
        null,
        null,
        null,
        null);
  }

  private static WrittenQuantity q(String text) {
    return text.isEmpty() ? null : WrittenQuantity.of(text);
  }

  private static final List<String> NO_SIDES = List.of("", "", "");

  // 400 cfm in 20 x 15 x 9 ft: 8.889 changes; 680 m3/h in 50 m3: 13.6 (USAF course text's formula);
  // 600 m3/h in a 6 in duct: 9.137 m/s
  @Test
  void airFollowsFromSizeAndFlow() {
    RoomAir feet = air(room("", List.of("20 ft", "15 ft", "9 ft"), "400 cfm", "6 in"));
    assertPrinted("8.889", feet.changesPerHour());
    RoomAir metres = air(room("50 m3", NO_SIDES, "680 m3/h", "6 in"));
    assertPrinted("13.6", metres.changesPerHour());
    assertPrinted("9.137", air(room("50 m³", NO_SIDES, "600 m3/h", "6 in")).ductMs());
    assertPrinted("2.778", air(room("", NO_SIDES, "600 m3/h", "")).openingMs());
    assertNull(air(room("", NO_SIDES, "600 m3/h", "")).changesPerHour());
  }

  // CDC 2003/2005 table: 23 and 46 min at 6 changes per hour
  @Test
  void aRoomClearsInItsTime() {
    RoomAir air = air(room("100 m3", NO_SIDES, "600 m3/h", ""));
    assertPrinted("23.03", air.purge90Minutes());
    assertPrinted("46.05", air.purge99Minutes());
  }

  private static RoomAir air(WrittenRoom room) {
    return RoomAir.of(RoomReader.read(room, NumberStyle.ANY));
  }

  // 1000 ft3 are 28.316846592 m3
  @ParameterizedTest
  @CsvSource({
    "1000 ft3, 28.3168",
    "1000 cu ft, 28.3168",
    "30 m³, 30.0000",
    "30 cubic metres, 30.0000"
  })
  void aVolumeComesInAnyUnit(String typed, String m3) {
    RoomValues values = RoomReader.read(room(typed, NO_SIDES, "", ""), NumberStyle.ANY);
    assertPrinted(m3, values.size().volumeM3());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "60 m3 | 4 m | -   | -    | -    | /volume /width /height",
        "60    | -   | -   | -    | -    | /volume",
        "-     | 4 m | 3 m | 1 mm | -    | /height",
        "-     | -   | -   | -    | 400  | /flow",
        "60 m  | -   | -   | -    | -    | /volume",
      })
  void whatIsWrongIsSaidAtItsField(
      String volume, String length, String width, String height, String flow, String fields) {
    WrittenRoom written =
        room(or(volume), List.of(or(length), or(width), or(height)), or(flow), "");
    EntryRefused refused =
        assertThrows(EntryRefused.class, () -> RoomReader.read(written, NumberStyle.ANY));
    assertEquals(
        List.of(fields.split(" ")),
        refused.remarks().stream().filter(Remark::isError).map(Remark::field).toList());
  }

  private static String or(String text) {
    return text == null ? "" : text;
  }

  @Test
  void everyCheckIsThereUntilItsOwnerSaysOtherwise() {
    List<CheckState> usual = checks();
    assertEquals(5, usual.size());
    List<CheckState> own =
        checks(
            new Check("co-detector", false, null, null),
            new Check("extinguisher", null, 90, "2026-01-31"));
    assertEquals(4, own.size());
    CheckState extinguisher = own.get(1);
    assertEquals(LocalDate.of(2026, 5, 1), extinguisher.dueOn());
    assertFalse(extinguisher.isDue(LocalDate.of(2026, 4, 30)));
    assertTrue(extinguisher.isDue(LocalDate.of(2026, 5, 1)));
  }

  private static List<CheckState> checks(Check... checks) {
    WrittenRoom written = new WrittenRoom("Shed", null, null, null, List.of(checks), null, null);
    return RoomReader.read(written, NumberStyle.ANY).checks();
  }

  // 29 CFR 1910.252: after every job, so on no day
  @Test
  void aFireWatchHasNoDay() {
    CheckState watch = checks().get(0);
    assertEquals(RoomCheck.FIRE_WATCH, watch.check());
    assertNull(watch.dueOn());
    assertFalse(watch.isDue(LocalDate.of(2030, 1, 1)));
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "fire-watch, 3, -, /checks/0/everyDays",
        "extinguisher, 0, -, /checks/0/everyDays",
        "extinguisher, 4000, -, /checks/0/everyDays",
        "extinguisher, -, 2126-01-01, /checks/0/lastOn",
        "extinguisher, -, yesterday, /checks/0/lastOn",
        "ladder, -, -, /checks/0/check",
      })
  void aCheckThatCannotBeIsSaid(String check, Integer days, String last, String field) {
    EntryRefused refused =
        assertThrows(EntryRefused.class, () -> checks(new Check(check, null, days, last)));
    assertEquals(List.of(field), refused.remarks().stream().map(Remark::field).toList());
  }

  @Test
  void aCheckStandsOnce() {
    Check one = new Check("extinguisher", null, null, null);
    assertThrows(EntryRefused.class, () -> checks(one, one));
  }
}
