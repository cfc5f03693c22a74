package club.emberwell.grid.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.grid.reading.Piece;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.remark.EntryRefused;
import org.junit.jupiter.api.Test;

class LayoutTest {
  private static Laser laser(LaserSource source, double nm, Double beam) {
    return new Laser(source, nm, 40, Motion.GANTRY, Emission.of(Regime.CW), null, beam, null);
  }

  private static final Laser CO2 = laser(LaserSource.CO2, 10_600, 150.835);

  /** physics.md 2.12: CO2 10.6 um, M2 1.1, f 50.8 mm: d0 150.835 um, z_R 1.5325 mm. */
  @Test
  void theRayleighLengthIsThePublishedOne() {
    assertEquals(1.5325, RoundPiece.rayleigh(0.150835, 0.0106, 1.1), 1e-4);
    assertEquals(1.0617, RoundPiece.rayleigh(0.046448, 0.001064, 1.5), 1e-4);
  }

  /** Chord of a circle of 74 mm with a fall of 1.5325 mm: 2 sqrt(1.5325 x 72.4675) = 21.077 mm. */
  @Test
  void withoutARotaryTheWidthIsTheChordThatStaysInFocus() {
    assertEquals(21.077, RoundPiece.across(74, CO2), 1e-3);
    double fall = 37 - Math.sqrt(37 * 37 - Math.pow(21.077 / 2, 2));
    assertEquals(1.5325, fall, 1e-3);
  }

  @Test
  void withoutAKnownBeamItIsAStatedShare() {
    double width = RoundPiece.across(100, laser(LaserSource.CO2, 10_600, null));
    assertEquals(28, width, 1e-9);
  }

  @Test
  void aThinRodIsNeverWiderThanItself() {
    assertEquals(2, RoundPiece.across(2, CO2), 1e-9);
  }

  @Test
  void withARotaryItIsTheCircumference() {
    Layout layout = Layout.of(new Piece(8, 2, null, null, 74.0, true), CO2, 20, 2);
    assertEquals(Math.PI * 74, layout.room().width(), 1e-9);
    // 232.48 mm less margins and labels leave room for 22 columns of 8 mm with gaps of 2 mm
    assertEquals(new Layout.Parts(20, 2, 1), layout.parts());
  }

  /** 5 x 8 mm and 4 gaps of 2 mm, 10 mm of labels, 2 mm of margin on both sides: 62 mm. */
  @Test
  void aFlatPieceTakesCellsGapsLabelsAndMargins() {
    Layout layout = Layout.of(new Piece(8, 2, null, null, null, false), CO2, 5, 5);
    assertEquals(62, layout.width(), 1e-9);
    assertEquals(48 + 4 + 5 + 4, layout.height(), 1e-9);
    assertEquals(12, layout.x(0), 1e-9);
    assertEquals(52, layout.x(4), 1e-9);
    assertEquals(6, layout.y(0), 1e-9);
    assertNull(layout.room().why());
  }

  @Test
  void whatOneBlankCannotHoldGoesOnMore() {
    Piece piece = new Piece(8, 2, 50.0, 40.0, null, false);
    Layout layout = Layout.of(piece, CO2, 5, 5);
    // 50 - 14 = 36 mm hold 3 cells across, 40 - 13 = 27 mm hold 2 down
    assertEquals(new Layout.Parts(3, 2, 2 * 3), layout.parts());
    assertEquals(layout.x(0), layout.x(3), 1e-9);
    assertEquals(0, layout.blank(0, 0, 5));
    assertEquals(1, layout.blank(1, 4, 5));
    assertEquals(5, layout.blank(4, 4, 5));
    assertTrue(layout.width() <= 50 && layout.height() <= 40);
  }

  @Test
  void aPieceTooSmallForOneTestIsRefusedAtItsField() {
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () -> Layout.of(new Piece(8, 2, 20.0, null, null, false), CO2, 2, 2));
    assertEquals("/blank/width", refused.remarks().get(0).field());
    EntryRefused round =
        assertThrows(
            EntryRefused.class,
            () -> Layout.of(new Piece(8, 2, null, null, 5.0, false), CO2, 2, 2));
    assertEquals("/blank/diameter", round.remarks().get(0).field());
  }
}
