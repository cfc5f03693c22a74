package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Process;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.SearchQuery;
import java.util.List;
import org.junit.jupiter.api.Test;

class SideBySideTest {
  private static final SearchQuery ONE = SearchQuery.everything().withText("white");
  private static final SearchQuery TWO = SearchQuery.everything().withText("black");

  private static List<RangeDetail> ranges(MadeTrials made) {
    return ConsensusService.ranges(made.columns(), false).stream().map(RangeDetail::core).toList();
  }

  @Test
  void combinationsShareOneAxis() {
    SideBySide found =
        SideBySide.of(
            List.of(ONE, TWO),
            List.of(ranges(MadeTrials.ofVoices(1, 2, 3)), ranges(MadeTrials.ofVoices(2, 8))));
    SideBySide.Axis axis = found.axes().get(Measure.AREAL_DOSE);
    assertEquals(1, axis.low());
    assertEquals(8, axis.high());
    assertTrue(axis.logarithmic());
    assertTrue(found.remarks().isEmpty());
    assertEquals(TWO, found.entries().get(1).query());
  }

  @Test
  void likeIsSetBesideLikeWhereBothHaveIt() {
    MadeTrials mixed = MadeTrials.ofVoices(1, 2, 3);
    mixed.by(1).at(WavelengthBand.BLUE).dose(5);
    MadeTrials blue = new MadeTrials();
    blue.by(1).at(WavelengthBand.BLUE).dose(5);
    SideBySide found = SideBySide.of(List.of(ONE, TWO), List.of(ranges(blue), ranges(mixed)));
    assertEquals(WavelengthBand.BLUE, found.entries().get(1).range().orElseThrow().key().band());
    assertEquals(1, found.entries().get(1).others());
  }

  @Test
  void whatKeepsThemFromBeingComparedIsSaid() {
    MadeTrials cut = new MadeTrials();
    cut.by(1).of(Process.CUT).at(WavelengthBand.BLUE).dose(5);
    SideBySide found =
        SideBySide.of(List.of(ONE, TWO), List.of(ranges(MadeTrials.ofVoices(1)), ranges(cut)));
    assertEquals(3, found.remarks().size());
    assertTrue(found.remarks().get(0).contains("do not share an axis"));
    SideBySide empty =
        SideBySide.of(List.of(ONE, TWO), List.of(ranges(MadeTrials.ofVoices(1)), List.of()));
    assertTrue(empty.entries().get(1).range().isEmpty());
  }
}
