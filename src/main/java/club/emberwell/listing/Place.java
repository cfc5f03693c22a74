package club.emberwell.listing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

/**
 * What a statement reads of a list: rows whose keys lie beyond those of a cursor, of these at most
 * so many from one on. One statement so serves both ways of paging.
 */
public final class Place {
  private static final Instant EARLIEST = Instant.parse("0001-01-01T00:00:00Z");
  private static final Instant LATEST = Instant.parse("9999-12-31T00:00:00Z");
  private static final UUID LEAST_ID = new UUID(0, 0);
  private static final UUID GREATEST_ID = new UUID(-1, -1);

  private final int from;
  private final int most;
  private final boolean falling;
  private final Cursor after;

  private Place(int from, int most, boolean falling, Cursor after) {
    this.from = from;
    this.most = most;
    this.falling = falling;
    this.after = after;
  }

  /** The first rows of a list. */
  public static Place first(ListOrder order, int most) {
    return new Place(0, most, order.falling(), null);
  }

  /**
   * @throws PartRefused for a cursor of another list
   */
  public static Place of(Part part, ListOrder order) {
    int rows = part.rows(order);
    Cursor after = part.cursor() == null ? null : Cursor.read(order.name(), part.cursor());
    return new Place(part.page() * rows, rows + 1, order.falling(), after);
  }

  /** Rows to leave out, of those beyond the keys. */
  public int from() {
    return from;
  }

  public int most() {
    return most;
  }

  /** The last number of a row that is read. */
  public int to() {
    return from + most - 1;
  }

  public boolean atBeginning() {
    return after == null;
  }

  /** A key that is a time: only what lies beyond; at the beginning, everything does. */
  public Instant time(int key) {
    return after == null ? falling ? LATEST : EARLIEST : after.time(key);
  }

  public LocalDate date(int key) {
    return after == null ? LocalDate.ofInstant(time(key), ZoneOffset.UTC) : after.date(key);
  }

  public long number(int key) {
    return after == null ? falling ? Long.MAX_VALUE : Long.MIN_VALUE : after.number(key);
  }

  public UUID id(int key) {
    return after == null ? falling ? GREATEST_ID : LEAST_ID : after.id(key);
  }

  /** Of rising lists only: no text is beyond all others. */
  public String word(int key) {
    return after == null ? "" : after.word(key);
  }
}
