package club.emberwell.report.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A thickness typed with the material. */
class ThicknessInWordsTest {
  private static Interpretation read(String process, String material, String thickness) {
    WrittenWork work =
        WrittenWork.of(process)
            .with(WorkProperty.MATERIAL, material)
            .with(
                WorkProperty.THICKNESS,
                thickness == null ? null : new WrittenQuantity(thickness, null, null));
    WrittenTrial trial =
        new WrittenTrial(null, null, new WrittenSettings(Map.of()), "right", null, null);
    WrittenReport report = new WrittenReport(null, null, work, List.of(trial), null, null);
    return ReportInterpreter.read(report, null, CatalogFiles.catalog(), NumberStyle.ANY);
  }

  private static String remarks(Interpretation read) {
    return String.join(
        " ",
        read.remarks().stream()
            .filter(remark -> remark.field().equals("/thickness"))
            .map(Remark::id)
            .toList());
  }

  @ParameterizedTest
  @CsvSource({
    "3mm birch ply, 3",
    "3 mm birch plywood, 3",
    "birch ply 6mm thick, 6",
    "'0,8mm veneer', 0.8",
    "1/8 in plywood, 3.175",
    "1/4\" MDF, 6.35",
    "3 millimetre plywood, 3",
    "300 mm x 200 mm x 3 mm plywood, 3",
    "300x200x3 mm plywood, "
  })
  void theOneThicknessInTheWordsOfACutIsTakenAndAskedAbout(String material, Double mm) {
    Interpretation read = read("cut", material, null);
    assertEquals(mm, read.work().thicknessMm());
    assertEquals(mm == null ? "thickness-missing" : "thickness-read", remarks(read));
  }

  @ParameterizedTest
  @CsvSource({
    "birch plywood",
    "3 mm ply on 6 mm mdf",
    "100 mm slate coaster",
    "2 in oak board",
    "16 ga steel",
    "V2A"
  })
  void severalOrNoneOrWhatIsNoThicknessLeavesItOpen(String material) {
    Interpretation read = read("cut", material, null);
    assertEquals(null, read.work().thicknessMm());
    assertEquals("thickness-missing", remarks(read));
  }

  @ParameterizedTest
  @CsvSource({"6 mm, 6, thickness-unlike-words", "3 mm, 3, ''", "1/8 in, 3.175, ''"})
  void aStatedThicknessCountsAndIsNeverContradictedInSilence(
      String stated, double mm, String remarks) {
    Interpretation read = read("cut", "3mm birch ply", stated);
    assertEquals(mm, read.work().thicknessMm());
    assertEquals(remarks, remarks(read));
  }

  @ParameterizedTest
  @CsvSource({"surface engraving", "score"})
  void whereNobodyMissesItTheWordsStayWords(String process) {
    Interpretation read = read(process, "20 mm oak disc", null);
    assertEquals(null, read.work().thicknessMm());
    assertEquals("", remarks(read));
  }
}
