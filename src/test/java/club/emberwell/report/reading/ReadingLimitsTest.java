package club.emberwell.report.reading;

import static club.emberwell.report.reading.Entries.settings;
import static club.emberwell.report.reading.Entries.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.StoredJson;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.TermKind;
import club.emberwell.entry.Difference;
import club.emberwell.entry.FieldChange;
import club.emberwell.laser.Setting;
import club.emberwell.laser.dose.Derived;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import com.fasterxml.jackson.core.type.TypeReference;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Just at a limit and just past it, what is said there, and what counts as a change. */
class ReadingLimitsTest {
  private static final Catalog CATALOG = CatalogFiles.catalog();

  private static Interpretation read(WrittenReport written) {
    return ReportInterpreter.read(written, null, CATALOG, NumberStyle.ANY);
  }

  private static List<String> told(WrittenReport written) {
    return read(written).errors().stream().map(r -> r.field() + ": " + r.detail()).toList();
  }

  private static WrittenReport of(WrittenTrial trial) {
    return Entries.with(List.of(trial));
  }

  private static WrittenReport of(WrittenWork work) {
    return new WrittenReport(
        null, Entries.laser(), work, List.of(Entries.trial(settings())), null, null);
  }

  private static WrittenWork oak(String process, WrittenQuantity thickness) {
    return WrittenWork.of(process)
        .with(WorkProperty.MATERIAL, "oak")
        .with(WorkProperty.THICKNESS, thickness);
  }

  private static WrittenWork saying(String notes, String lot, String controllerVersion) {
    return oak("score", null)
        .with(WorkProperty.NOTES, notes)
        .with(WorkProperty.LOT, lot)
        .with(WorkProperty.CONTROLLER_VERSION, controllerVersion);
  }

  @ParameterizedTest
  @CsvSource({"0, false", "1, true", "10000, true", "10001, false"})
  void passesAreCounted(int passes, boolean read) {
    WrittenReport written = Entries.with(settings().with(Setting.PASSES, passes));
    assertEquals(
        read ? List.of() : List.of("/settings/passes: Passes are counted from 1 to 10000."),
        told(written));
    assertEquals(
        read ? passes : null,
        read(written).trials().get(0).settings().values().get(Setting.PASSES));
  }

  @Test
  void aPowerThatIsNeitherSaysWhatIsWrong() {
    assertEquals(
        List.of("/settings/power: Give the power in percent or in watts."),
        told(Entries.with(settings("8", "400 mm/s", "0.1 mm"))));
    assertEquals(
        List.of("/settings/power: \"mm\" measures something else; a unit like W is needed."),
        told(Entries.with(settings("5 mm", "400 mm/s", "0.1 mm"))));
    assertEquals(
        List.of("/settings/power: A share of the rated power ends at 100 %."),
        told(Entries.with(settings("120 %", "400 mm/s", "0.1 mm"))));
    assertEquals(
        List.of("/settings/power: This has to be above zero."),
        told(Entries.with(settings("0 W", "400 mm/s", "0.1 mm"))));
    assertEquals(
        List.of("/settings/power: 200000 W is not between 0.000001 and 100000 W."),
        told(Entries.with(settings("200 kW", "400 mm/s", "0.1 mm"))));
  }

  @Test
  void flagsAndChoicesAreReadAsTheyAre() {
    WrittenSettings written =
        settings().with(Setting.AIR_ASSIST, false).with(Setting.DIRECTION, "One Way");
    Interpretation read = read(Entries.with(written));
    assertEquals(List.of(), read.remarks());
    assertEquals("one-way", read.trials().get(0).settings().byCode().get("direction"));
    assertEquals(false, read.trials().get(0).settings().byCode().get("airAssist"));
    assertEquals(
        List.of("/settings/direction: Choose one of: one-way, two-way."),
        told(Entries.with(settings().with(Setting.DIRECTION, "sideways"))));
  }

  @ParameterizedTest
  @CsvSource({"0, false", "1, true", "5, true", "6, false"})
  void qualityGoesFromOneToFive(int quality, boolean read) {
    WrittenReport written =
        of(new WrittenTrial(null, null, settings(), "right", quality, List.of()));
    assertEquals(
        read ? List.of() : List.of("/quality: Give a quality from 1 to 5."), told(written));
    assertEquals(read ? quality : null, read(written).trials().get(0).quality());
  }

  @Test
  void qualityIsForWhatCameOutRight() {
    WrittenReport written =
        of(new WrittenTrial(null, null, settings(), "too little", 4, List.of()));
    assertEquals(List.of("/quality: Give a quality only if the result was right."), told(written));
    assertNull(read(written).trials().get(0).quality());
    WrittenReport unknown = of(new WrittenTrial(null, null, settings(), "grand", 4, List.of()));
    assertEquals(4, read(unknown).trials().get(0).quality());
  }

  @Test
  void tenDefectsFitInTheirOrder() {
    List<String> ten = Collections.nCopies(10, "banding");
    WrittenReport most = of(new WrittenTrial(null, null, settings(), "right", null, ten));
    assertEquals(List.of("banding"), read(most).trials().get(0).defects());
    List<String> eleven = Collections.nCopies(11, "banding");
    assertEquals(
        List.of("/defects: At most 10 defects fit here."),
        told(of(new WrittenTrial(null, null, settings(), "right", null, eleven))));
    List<String> odd = List.of("soot", "sadness", " ");
    List<String> told = told(of(new WrittenTrial(null, null, settings(), "right", null, odd)));
    assertEquals(1, told.size());
    assertTrue(told.get(0).startsWith("/defects/1: Choose from: banding, "), told::toString);
  }

  @ParameterizedTest
  @CsvSource({"-1, false", "0, true", "399, true", "400, false"})
  void placesOfAGridCountFromNought(int place, boolean read) {
    String detail = "A grid's places count from 0 to 399.";
    assertEquals(
        read ? List.of() : List.of("/trials/0/row: " + detail, "/trials/0/column: " + detail),
        told(of(new WrittenTrial(place, place, settings(), "right", null, null))));
  }

  @Test
  void fourHundredTrialsFit() {
    assertEquals(List.of(), told(Entries.grid(20, 20, trial -> trial)));
    assertEquals(
        List.of("/trials: At most 400 tests fit in a report."),
        told(Entries.grid(1, 401, trial -> trial)));
    WrittenTrial first = new WrittenTrial(0, 0, settings(), "right", null, null);
    WrittenTrial below = new WrittenTrial(1, 0, settings(), "right", null, null);
    assertEquals(List.of(), told(Entries.with(List.of(first, below))));
    assertEquals(
        List.of("/trials/1: A test is missing here."),
        told(Entries.with(IntStream.range(0, 2).mapToObj(i -> i == 0 ? first : null).toList())));
  }

  @ParameterizedTest
  @CsvSource({"0.0001 mm, true", "0.00009 mm, false", "10000 mm, true", "10001 mm, false"})
  void thicknessHasBounds(String thickness, boolean read) {
    WrittenReport written = of(oak("cut", text(thickness)));
    assertEquals(read, told(written).isEmpty());
    assertEquals(read, read(written).work().thicknessMm() != null);
  }

  @Test
  void textsHaveALengthEach() {
    WrittenWork most = saying("n\n".repeat(2000), "l".repeat(80), "c".repeat(80));
    Interpretation read = read(of(most));
    assertEquals(List.of(), read.errors());
    assertEquals(3999, read.work().text(WorkProperty.NOTES).length());
    assertEquals("l".repeat(80), read.work().text(WorkProperty.LOT));
    assertEquals("c".repeat(80), read.work().text(WorkProperty.CONTROLLER_VERSION));
    WrittenWork more = saying("n".repeat(4001), "l".repeat(81), "c\n");
    assertEquals(
        List.of(
            "/notes: At most 4000 characters fit here.",
            "/lot: At most 80 characters fit here.",
            "/controllerVersion: This text has characters that cannot be shown."),
        told(of(more)));
    assertEquals(List.of(), told(Entries.work("x".repeat(120), null, null)));
  }

  @Test
  void aConfirmedPointerIsReadToo() {
    assertEquals(
        List.of("/confirmed/0: This text has characters that cannot be shown."),
        told(Entries.report().withConfirmed(List.of("/settings/\u0000"))));
  }

  // Worked example 2.1 again: F = P n / (v h) = 40 W / (400 mm/s x 0.1 mm)
  @Test
  void aDoseIsComputedFromWhatWasTyped() {
    DoseCalculator.Answer answer =
        DoseCalculator.compute(Entries.laser(), "surface engraving", settings(), NumberStyle.ANY);
    assertEquals(1.0, answer.derived().arealDose(), 1e-12);
    assertEquals(List.of(), answer.remarks());
    WrittenLaser odd =
        new WrittenLaser("co2", text("1064 nm"), text("40 W"), "gantry", "cw", null, null);
    List<Remark> remarks =
        DoseCalculator.compute(
                odd, "surface engraving", settings("45 W", "400 mm/s", "0.1 mm"), NumberStyle.ANY)
            .remarks();
    assertEquals(
        List.of("/laser/wavelength", "/settings/power"),
        remarks.stream().map(Remark::field).toList());
  }

  @Test
  void aDoseOfWhatIsAtFaultIsRefusedAtItsFields() {
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () -> DoseCalculator.compute(null, "melting", null, NumberStyle.ANY));
    assertEquals(
        List.of("/laser", "/process", "/settings"),
        refused.remarks().stream().map(Remark::field).toList());
  }

  @Test
  void whatIsWrongWithTheLaserIsSaidOnceNotAtEachTrial() {
    WrittenLaser odd =
        new WrittenLaser("co2", text("1064 nm"), text("40 W"), "gantry", "cw", null, null);
    WrittenReport written =
        new WrittenReport(
            null,
            odd,
            oak("surface engraving", null),
            List.of(
                new WrittenTrial(0, 0, settings(), "right", null, null),
                new WrittenTrial(
                    0, 1, settings("45 W", "400 mm/s", "0.1 mm"), "right", null, null)),
            null,
            null);
    assertEquals(
        List.of("/laser/wavelength", "/trials/1/settings/power"),
        read(written).remarks().stream().map(Remark::field).toList());
  }

  @Test
  void nothingFollowsWhereTheLaserOrTheWorkIsNotKnown() {
    WrittenReport melted = of(oak("melting", null));
    assertEquals(Derived.NOTHING, read(melted).trials().get(0).derived());
    WrittenReport noLaser =
        new WrittenReport(null, null, oak("cut", text("3 mm")), melted.trials(), null, null);
    assertEquals(Derived.NOTHING, read(noLaser).trials().get(0).derived());
  }

  @Test
  void aChangeIsToldAtTheFieldOfThePageThatShowsIt() {
    WrittenReport before = Entries.with(settings("45 %", "400 mm/s", "0.1 mm"));
    WrittenReport after =
        Entries.with(settings("9 W", "400 mm/s", "0.1 mm").with(Setting.PASSES, 2))
            .withConfirmed(List.of("/settings/power"));
    assertEquals(
        List.of(
            new FieldChange("/settings/power", "45 %", "9 W"),
            new FieldChange("/settings/passes", null, "2")),
        WrittenDifference.between(before, after).fields().stream()
            .sorted((a, b) -> b.field().compareTo(a.field()))
            .toList());
    assertTrue(WrittenDifference.between(before, before.withConfirmed(List.of("/x"))).isEmpty());
    Difference grid =
        WrittenDifference.between(
            Entries.grid(1, 2, t -> t),
            Entries.grid(
                1,
                2,
                t ->
                    t.column() == 0
                        ? t
                        : new WrittenTrial(0, 1, settings(), "too much", null, List.of())));
    assertEquals(List.of(new FieldChange("/trials/1/effect", "right", "too much")), grid.fields());
  }

  // SHA-256 has 32 bytes
  @Test
  void twoEntriesThatSayTheSameHaveOneHash() {
    WrittenReport one = Entries.report();
    String hash = WrittenHash.of(one);
    assertEquals(64, hash.length());
    assertEquals(hash, WrittenHash.of(one.withConfirmed(List.of("/settings/power"))));
    assertNotEquals(hash, WrittenHash.of(Entries.with(settings("9 W", "400 mm/s", "0.1 mm"))));
  }

  @Test
  void whatIsStoredIsReadAgain() {
    WrittenSettings written =
        settings()
            .with(Setting.FOCUS_OFFSET, new WrittenQuantity(null, new BigDecimal("-2"), "mm"))
            .with(Setting.AIR_ASSIST, true)
            .with(Setting.DIRECTION, "one-way");
    WrittenReport report = Entries.with(written);
    WrittenReport back =
        StoredJson.read(StoredJson.write(report), new TypeReference<WrittenReport>() {});
    assertEquals(report, back);
    assertEquals(
        List.of("power", "speed", "lineSpacing", "passes", "focusOffset", "airAssist", "direction"),
        List.copyOf(written.byCode().keySet()));
    WrittenSettings later =
        settingsFrom("{\"halo\": {\"deep\": [1]}, \"passes\": 3, \"speed\": null}");
    assertEquals(WrittenSettings.NONE.with(Setting.PASSES, 3), later);
    assertThrows(IllegalStateException.class, () -> settingsFrom("{\"passes\": {}}"));
    assertThrows(IllegalStateException.class, () -> settingsFrom("[1]"));
    assertNull(written.with(Setting.SPEED, null).of(Setting.SPEED));
  }

  private static WrittenSettings settingsFrom(String json) {
    return StoredJson.read(json, new TypeReference<WrittenSettings>() {});
  }

  // #1f2a44 is nearest to navy by CIEDE2000 among the colour words
  @Test
  void aWordIsFiledWithoutRemarksAsWithThem() {
    assertEquals("navy", slug(TermKind.COLOUR, "#1f2a44"));
    assertEquals("birch-plywood", slug(TermKind.MATERIAL, "birch plywood"));
    assertNull(slug(TermKind.MATERIAL, "#1f2a44"));
    assertNull(slug(TermKind.COLOUR, "the colour of the sea"));
    Interpretation read = read(Entries.work("aluminium", "powder coat", "#1f2a44"));
    assertEquals(
        List.of("Filed as Navy, the nearest colour we know."),
        read.remarks().stream()
            .filter(r -> r.field().equals("/colour"))
            .map(Remark::detail)
            .toList());
  }

  private static String slug(TermKind kind, String text) {
    return VocabularyStep.slug(CATALOG.vocabulary(), CATALOG.colours(), kind, text);
  }

  @Test
  void aBanIsNoPartOfWhatIsStored() {
    Interpretation vinyl = read(Entries.work("vinyl", null, null));
    Interpretation stored =
        new Interpretation(
            vinyl.machineId(),
            vinyl.laser(),
            vinyl.work(),
            vinyl.repeatOf(),
            vinyl.trials(),
            Optional.empty(),
            vinyl.remarks());
    assertTrue(vinyl.ban().isPresent());
    assertTrue(vinyl.sameAs(stored) && stored.sameAs(vinyl));
    assertFalse(vinyl.sameAs(read(Entries.report())));
    Remark note = read(Entries.work("moon rock", null, null)).remarks().get(0);
    assertEquals(List.of(note), vinyl.withRemarks(List.of(note)).remarks());
    assertFalse(vinyl.sameAs(vinyl.withRemarks(List.of(note))));
  }

  @Test
  void aProhibitedCoatingIsNamedInWords() {
    assertTrue(read(Entries.work("oak", "glittery PVC foil", null)).ban().isPresent());
    assertTrue(read(Entries.report()).ban().isEmpty());
  }
}
