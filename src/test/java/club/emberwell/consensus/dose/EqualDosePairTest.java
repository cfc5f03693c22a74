package club.emberwell.consensus.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.CheckFile;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The pairs shown as limits of transfer against the two published data sets. Tracks melted into
 * bare metal, not engraving.
 */
class EqualDosePairTest {
  private static final Pattern SETTINGS = Pattern.compile("(\\d+) W, (\\d+) mm/s.*");

  private static double depth316(String settings) {
    Matcher s = SETTINGS.matcher(settings);
    assertTrue(s.matches(), settings);
    return CheckFile.dataset("kuleuven_316l_ti64_conditions.csv").stream()
        .filter(row -> row.get("alloy").equals("316L"))
        .filter(row -> row.get("power_W").equals(s.group(1)))
        .filter(row -> row.get("speed_mm_s").equals(s.group(2)))
        .mapToDouble(row -> Double.parseDouble(row.get("depth_um")))
        .findFirst()
        .orElseThrow();
  }

  private static double meanDepth(String machine) {
    List<Map<String, String>> rows = CheckFile.dataset("lane2020_in625_tracks.csv");
    return rows.stream()
        .filter(row -> row.get("machine").equals(machine) && row.get("case").equals("A"))
        .mapToDouble(row -> Double.parseDouble(row.get("depth_mean_um")))
        .average()
        .orElseThrow();
  }

  @Test
  void everyDepthIsThePublishedOne() {
    int steel = 0;
    for (EqualDosePair pair : EqualDosePair.ALL) {
      if (pair.what().startsWith("steel")) {
        assertEquals(depth316(pair.first()), pair.firstDepthUm());
        assertEquals(depth316(pair.second()), pair.secondDepthUm());
        steel++;
      } else {
        assertEquals(meanDepth("AMMT"), pair.firstDepthUm(), 0.0005);
        assertEquals(meanDepth("CBM"), pair.secondDepthUm(), 0.0005);
      }
    }
    assertEquals(5, steel);
  }

  @Test
  void bothTracksOfAPairHaveTheDoseItNames() {
    for (EqualDosePair pair : EqualDosePair.ALL) {
      double named = Double.parseDouble(pair.what().replaceAll(".*, ([0-9.]+) J/mm", "$1"));
      assertEquals(named, dose(pair.first()), 5e-5, pair.what());
      assertEquals(named, dose(pair.second()), 5e-5, pair.what());
    }
  }

  private static double dose(String settings) {
    Matcher s = SETTINGS.matcher(settings);
    assertTrue(s.matches(), settings);
    return Double.parseDouble(s.group(1)) / Double.parseDouble(s.group(2));
  }

  @Test
  void someAgreeWithinOnePercentAndSomeFail() {
    EqualDosePair.ALL.subList(0, 2).forEach(pair -> assertEquals(1, pair.ratio(), 0.0105));
    assertEquals(1.487, EqualDosePair.ALL.get(4).ratio(), 0.0005);
    assertEquals(3.57, EqualDosePair.ALL.get(5).ratio(), 0.005);
  }
}
