package club.emberwell.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class CursorTest {
  private static final ListOrder NEWEST = ListOrder.newestFirst("letters", 3);
  private static final UUID ID = UUID.fromString("0190a2f0-1c5e-7b3a-8f00-5e2d9c4b7a11");
  private static final Instant TIME = Instant.parse("2026-11-26T11:39:00.123456Z");

  /** Numbers fall, and new ones are added before each page is read. */
  @Test
  void whatIsAddedBetweenPagesNeitherRepeatsNorHidesARow() {
    List<Long> rows = new ArrayList<>();
    for (long i = 1; i <= 20; i++) {
      rows.add(0, i);
    }
    List<Long> walked = new ArrayList<>();
    String cursor = null;
    long added = 100;
    do {
      Slice<Long> some =
          Slice.read(Part.after(cursor, null), NEWEST, place -> behind(rows, place), List::of);
      walked.addAll(some.rows());
      cursor = some.next();
      rows.add(0, added++);
    } while (cursor != null);
    assertEquals(rows.subList(rows.size() - 20, rows.size()), walked);
  }

  private static List<Long> behind(List<Long> rows, Place place) {
    return rows.stream()
        .filter(row -> row < place.number(0))
        .skip(place.from())
        .limit(place.most())
        .toList();
  }

  @Test
  void keysComeBackAsTheyWere() {
    String text = Cursor.of("letters", List.of(TIME, 7L, ID, "Ä b")).text();
    assertTrue(text.matches("[A-Za-z0-9_-]+"), text);
    Cursor cursor = Cursor.read("letters", text);
    assertEquals(TIME, cursor.time(0));
    assertEquals(7, cursor.number(1));
    assertEquals(ID, cursor.id(2));
    assertEquals("Ä b", cursor.word(3));
  }

  @Test
  void whatIsNoCursorOfTheListIsRefused() {
    String text = Cursor.of("letters", List.of(TIME, ID)).text();
    refused("parcels", text);
    for (int i = 0; i < text.length(); i++) {
      refused("letters", text.substring(0, i));
      char other = text.charAt(i) == 'A' ? 'B' : 'A';
      refused("letters", text.substring(0, i) + other + text.substring(i + 1));
    }
    refused("letters", "%%%");
    refused("letters", "A".repeat(Cursor.TEXT_MAX + 4));
    Cursor few = Cursor.of("letters", List.of("word"));
    assertThrows(PartRefused.class, () -> few.number(0));
    assertThrows(PartRefused.class, () -> few.id(1));
  }

  private static void refused(String list, String text) {
    PartRefused refused = assertThrows(PartRefused.class, () -> Cursor.read(list, text), text);
    assertEquals("/cursor", refused.pointer());
  }

  @Test
  void aPageHasOneToAHundredRows() {
    assertNull(Part.after(" ", "").cursor());
    assertEquals(100, Part.after(null, "100").size());
    for (String size : List.of("0", "101", "-1", "x", "1.5", "1e2", "99999999999")) {
      assertEquals(
          "/size", assertThrows(PartRefused.class, () -> Part.after(null, size)).pointer(), size);
    }
  }
}
