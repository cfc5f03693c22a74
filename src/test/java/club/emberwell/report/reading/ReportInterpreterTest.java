package club.emberwell.report.reading;

import static club.emberwell.report.reading.Entries.settings;
import static club.emberwell.report.reading.Entries.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One test per rule, each with its remarks. */
class ReportInterpreterTest {
  private static final Catalog CATALOG = CatalogFiles.catalog();
  private static final Laser MACHINE =
      new Laser(
          LaserSource.CO2, 10_600, 40, Motion.GANTRY, Emission.of(Regime.CW), null, 150.0, null);

  private static Interpretation read(WrittenReport written) {
    return ReportInterpreter.read(written, null, CATALOG, NumberStyle.ANY);
  }

  private static Remark only(Interpretation read, String id) {
    List<Remark> found = read.remarks().stream().filter(r -> r.id().equals(id)).toList();
    assertEquals(1, found.size(), () -> id + " in " + read.remarks());
    return found.get(0);
  }

  private static void refusedAt(Interpretation read, String id, String field) {
    Remark remark = only(read, id);
    assertEquals(Severity.ERROR, remark.severity());
    assertEquals(field, remark.field());
    assertFalse(read.readable());
  }

  // Worked example 2.1: 40 W, 400 mm/s, 0.1 mm, one pass give 1.0 J/mm2 (energy balance, F = P n /
  // (v h); single control variable in Kudela et al., Coatings 2023, 13(12) 2006).
  @Test
  void theWorkedExampleOfArealDoseComesOut() {
    Interpretation read = read(Entries.report());
    assertEquals(List.of(), read.remarks());
    assertTrue(read.readable());
    assertEquals(1.0, read.trials().get(0).derived().arealDose(), 1e-12);
    assertNull(read.trials().get(0).derived().lineDose());
    assertEquals("birch-plywood", read.work().material().slug());
    assertEquals("birch plywood", read.work().material().written());
  }

  // Worked example 2.2: 40 W, 10 mm/s give 4.0 J/mm (Steen & Mazumder, Laser Material Processing).
  @Test
  void lineWorkNeedsNoSpacing() {
    WrittenTrial scored = Entries.trial(settings("40 W", "10 mm/s", null));
    Interpretation read = read(Entries.work("birch plywood", null, null, "score", List.of(scored)));
    assertEquals(List.of(), read.remarks());
    assertEquals(4.0, read.trials().get(0).derived().lineDose(), 1e-12);
  }

  @Test
  void aCutWithoutThicknessIsKeptWithAWarning() {
    WrittenTrial cut = Entries.trial(settings("40 W", "10 mm/s", null));
    Interpretation read = read(Entries.work("birch plywood", null, null, "cut", List.of(cut)));
    Remark remark = only(read, "thickness-missing");
    assertEquals(Severity.WARNING, remark.severity());
    assertEquals("/thickness", remark.field());
    assertTrue(read.readable());
  }

  @Test
  void areaWorkWithoutSpacingIsKeptWithAWarningAndWithoutDose() {
    Interpretation read = read(Entries.with(settings("45 %", "400 mm/s", null)));
    Remark remark = only(read, "spacing-missing");
    assertEquals(Severity.WARNING, remark.severity());
    assertEquals("/settings/lineSpacing", remark.field());
    assertTrue(read.readable());
    assertNull(read.trials().get(0).derived().arealDose());
  }

  @Test
  void powerIsPercentOrWattsAsItsUnitSays() {
    Interpretation percent = read(Entries.with(settings("45 %", "400 mm/s", "0.1 mm")));
    assertEquals(45.0, percent.trials().get(0).settings().powerPercent());
    assertNull(percent.trials().get(0).settings().powerW());
    Interpretation watts = read(Entries.with(settings("12 W", "400 mm/s", "0.1 mm")));
    assertEquals(12.0, watts.trials().get(0).settings().powerW());
    assertNull(watts.trials().get(0).settings().powerPercent());
  }

  @Test
  void powerWithoutUnitIsAskedBackWithBothReadings() {
    Interpretation read = read(Entries.with(settings("8", "400 mm/s", "0.1 mm")));
    refusedAt(read, "unit-missing", "/settings/power");
    List<String> readings = only(read, "unit-missing").readings();
    assertTrue(readings.stream().anyMatch(r -> r.contains("%")), readings::toString);
    assertTrue(readings.stream().anyMatch(r -> r.contains("W")), readings::toString);
  }

  // the laser has 10 W: 45 W is beyond it, 45 mW is less than a hundredth of it
  @Test
  void whatOnlyOneReadingOfTheLaserCanBeToldIsTakenWithANote() {
    Interpretation read = read(Entries.with(settings("45", "400 mm/s", "0.1 mm")));
    assertTrue(read.readable());
    assertEquals(45.0, read.trials().get(0).settings().powerPercent());
    assertEquals("Read as 45 %.", only(read, "unit-assumed").detail());
    assertEquals("/settings/power", only(read, "unit-assumed").field());
    // a range stays a question, though one end of it is beyond the laser
    refusedAt(
        read(Entries.with(settings("5-500 W", "400 mm/s", "0.1 mm"))),
        "range-given",
        "/settings/power");
  }

  @Test
  void wordsBesideASettingAreNamedWhereTheyAreLeftOut() {
    Interpretation read = read(Entries.with(settings("5W diode", "400 mm/s", "0,08 mm hatch")));
    assertTrue(read.readable());
    assertEquals(5.0, read.trials().get(0).settings().powerW());
    assertEquals(0.08, read.trials().get(0).settings().lineSpacingMm());
    assertEquals(
        List.of("Read as 5 W. Left out: “diode”.", "Read as 0.08 mm. Left out: “hatch”."),
        read.remarks().stream()
            .filter(r -> r.id().equals("words-left-out"))
            .map(Remark::detail)
            .toList());
    Interpretation two = read(Entries.with(settings("5W 455nm", "400 mm/s", "0.1 mm")));
    refusedAt(two, "not-exact", "/settings/power");
    assertEquals(List.of("5 W"), only(two, "not-exact").readings());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "120 %     | 400 mm/s    | 0.1 mm | /settings/power",
        "0 %       | 400 mm/s    | 0.1 mm | /settings/power",
        "-5 W      | 400 mm/s    | 0.1 mm | /settings/power",
        "5 mm      | 400 mm/s    | 0.1 mm | /settings/power",
        "hot       | 400 mm/s    | 0.1 mm | /settings/power",
        "45 %      | -400 mm/s   | 0.1 mm | /settings/speed",
        "45 %      | 400 W       | 0.1 mm | /settings/speed",
        "45 %      | 400         | 0.1 mm | /settings/speed",
        "45 %      | 1,000 mm/min| 0.1 mm | /settings/speed",
        "45 %      | 1e14 mm/s   | 0.1 mm | /settings/speed",
        "45 %      | 400 mm/s    | 0.1 kg | /settings/lineSpacing",
        "45 %      | 400 mm/s    | 500 mm | /settings/lineSpacing",
      })
  void aNumberAtFaultIsRefusedAtItsField(String power, String speed, String spacing, String field) {
    Interpretation read = read(Entries.with(settings(power, speed, spacing)));
    assertFalse(read.readable());
    assertEquals(List.of(field), read.errors().stream().map(Remark::field).toList());
  }

  @Test
  void theWritersOwnStyleSettlesAThousand() {
    WrittenReport written = Entries.with(settings("45 %", "1,000 mm/min", "0.1 mm"));
    Interpretation point =
        ReportInterpreter.read(written, null, CATALOG, NumberStyle.DECIMAL_POINT);
    assertTrue(point.readable(), () -> point.remarks().toString());
    assertEquals(1000 / 60.0, point.trials().get(0).settings().speedMmS(), 1e-9);
  }

  @Test
  void exactlyOneOfMachineAndLaser() {
    WrittenReport none = withLaser(null, null);
    refusedAt(read(none), "required", "/machine");
    WrittenReport both = withLaser(UUID.randomUUID(), Entries.laser());
    refusedAt(read(both), "machine-and-laser", "/laser");
  }

  @Test
  void anUnknownMachineIsRefusedAndAKnownOneGivesItsLaser() {
    WrittenReport written = withLaser(UUID.randomUUID(), null);
    refusedAt(read(written), "machine-unknown", "/machine");
    Interpretation known = ReportInterpreter.read(written, MACHINE, CATALOG, NumberStyle.ANY);
    assertEquals(MACHINE, known.laser());
    assertEquals(1.0, known.trials().get(0).derived().arealDose(), 1e-12);
  }

  @Test
  void aLaserWithoutRegimeIsTakenAsUsualForItsSource() {
    WrittenLaser fibre =
        new WrittenLaser("fibre", text("1064 nm"), text("30 W"), "galvo", null, null, null);
    Interpretation read = read(withLaser(null, fibre));
    assertEquals(Regime.NS, read.laser().regime());
    assertEquals("/laser/regime", only(read, "regime-assumed").field());
  }

  @Test
  void aWavelengthUnlikeItsSourceIsOnlyWarnedOf() {
    WrittenLaser odd =
        new WrittenLaser("co2", text("1064 nm"), text("30 W"), "gantry", "cw", null, null);
    Interpretation read = read(withLaser(null, odd));
    Remark remark = only(read, "wavelength-unlike-source");
    assertEquals(Severity.WARNING, remark.severity());
    assertEquals("/laser/wavelength", remark.field());
    assertTrue(read.readable());
  }

  @Test
  void aLaserAtFaultIsRefusedBelowLaser() {
    WrittenLaser bad =
        new WrittenLaser("steam", text("10.6 kg"), null, "sideways", "xx", null, null);
    List<String> fields = read(withLaser(null, bad)).errors().stream().map(Remark::field).toList();
    assertEquals(
        List.of(
            "/laser/source",
            "/laser/wavelength",
            "/laser/ratedPower",
            "/laser/motion",
            "/laser/regime"),
        fields);
  }

  @Test
  void wordsThatMatchNothingStayAsWritten() {
    Interpretation read = read(Entries.work("moon rock composite", null, null));
    Remark remark = only(read, "term-unknown");
    assertEquals(Severity.INFO, remark.severity());
    assertEquals("/material", remark.field());
    assertTrue(read.work().material().waits());
    assertTrue(read.readable());
  }

  @Test
  void wordsThatMeanTwoThingsStayAsWritten() {
    // "foam board" is listed as ambiguous in shared/vocabulary/spellings.yaml
    Interpretation read = read(Entries.work("foam board", null, null));
    assertEquals(Severity.INFO, only(read, "term-ambiguous").severity());
    assertTrue(read.work().material().waits());
  }

  @Test
  void aHexColourIsFiledUnderTheNearestWord() {
    Interpretation read = read(Entries.work("aluminium", "powder coat", "#1f2a44"));
    assertEquals("/colour", only(read, "colour-named").field());
    assertEquals("navy", read.work().word(WorkProperty.COLOUR).slug());
    assertEquals("#1f2a44", read.work().word(WorkProperty.COLOUR).written());
  }

  @Test
  void aMissingMaterialIsAskedFor() {
    refusedAt(read(Entries.work(" ", null, null)), "required", "/material");
  }

  @Test
  void textsThatCannotBeKeptAreRefused() {
    refusedAt(read(Entries.work("x".repeat(121), null, null)), "text-too-long", "/material");
    refusedAt(read(Entries.work("oak\u0000", null, null)), "text-unreadable", "/material");
    refusedAt(read(Entries.work("oak", "\ud800", null)), "text-unreadable", "/coating");
    refusedAt(read(Entries.work("oak", null, "\u202Ered")), "text-unreadable", "/colour");
  }

  @Test
  void qualityOnlyGoesWithRight() {
    WrittenTrial burnt = new WrittenTrial(null, null, settings(), "too much", 3, null);
    refusedAt(read(Entries.with(List.of(burnt))), "quality-without-right", "/quality");
    WrittenTrial six = new WrittenTrial(null, null, settings(), "right", 6, null);
    refusedAt(read(Entries.with(List.of(six))), "out-of-range", "/quality");
  }

  @Test
  void defectsComeFromTheVocabularyOnceEach() {
    WrittenTrial trial =
        new WrittenTrial(null, null, settings(), "right", null, List.of("soot", "smoke stain"));
    Interpretation read = read(Entries.with(List.of(trial)));
    assertEquals(List.of("smoke-stain"), read.trials().get(0).defects());
    WrittenTrial odd =
        new WrittenTrial(null, null, settings(), "right", null, List.of("banding", "sadness"));
    refusedAt(read(Entries.with(List.of(odd))), "defect-unknown", "/defects/1");
    WrittenTrial many =
        new WrittenTrial(null, null, settings(), "right", null, Collections.nCopies(11, "banding"));
    refusedAt(read(Entries.with(List.of(many))), "too-many", "/defects");
  }

  @Test
  void aTrialNeedsItsEffect() {
    WrittenTrial none = new WrittenTrial(null, null, settings(), null, null, null);
    refusedAt(read(Entries.with(List.of(none))), "required", "/effect");
    WrittenTrial odd = new WrittenTrial(null, null, settings(), "lovely", null, null);
    refusedAt(read(Entries.with(List.of(odd))), "choice-unknown", "/effect");
  }

  @Test
  void trialsOfAGridAreNamedByTheirPlaceInTheList() {
    Interpretation fine = read(Entries.grid(3, 4, trial -> trial));
    assertEquals(12, fine.trials().size());
    assertTrue(fine.readable());
    Interpretation fault =
        read(
            Entries.grid(
                1,
                2,
                t ->
                    t.column() == 0
                        ? t
                        : new WrittenTrial(
                            t.row(),
                            t.column(),
                            settings("8", "400 mm/s", "0.1 mm"),
                            "right",
                            null,
                            null)));
    refusedAt(fault, "unit-missing", "/trials/1/settings/power");
  }

  @Test
  void twoTrialsInOnePlaceAndTooManyTrialsAreRefused() {
    WrittenTrial one = new WrittenTrial(0, 0, settings(), "right", null, null);
    refusedAt(read(Entries.with(List.of(one, one))), "place-taken", "/trials/1");
    refusedAt(read(Entries.grid(1, 401, t -> t)), "too-many", "/trials");
    WrittenTrial half = new WrittenTrial(0, null, settings(), "right", null, null);
    refusedAt(read(Entries.with(List.of(half))), "required", "/trials/0/column");
  }

  @Test
  void implausibleValuesWarnAndCanBeConfirmed() {
    Interpretation read = read(Entries.with(settings("45 %", "9000 mm/s", "0.1 mm")));
    assertTrue(read.readable());
    List<Remark> open = read.unconfirmed(null);
    assertEquals(List.of("/settings/speed"), open.stream().map(Remark::field).distinct().toList());
    assertEquals(List.of(), read.unconfirmed(List.of("/settings/speed")));
  }

  @Test
  void aProhibitedMaterialTakesNoSettings() {
    Interpretation read = read(Entries.work("vinyl", null, null));
    assertEquals("PVC (vinyl)", read.ban().orElseThrow().subject());
    assertFalse(read.ban().orElseThrow().source().isBlank());
  }

  @Test
  void aProhibitedMaterialIsFoundInWordsThatMatchNothing() {
    Interpretation read = read(Entries.work("glittery red vinyl offcut", null, null));
    assertTrue(read.work().material().waits());
    assertTrue(read.ban().isPresent());
    assertTrue(read(Entries.work("oak, PVC-free offcut", null, null)).ban().isEmpty());
  }

  @Test
  void theProcessIsOneOfTheKnown() {
    WrittenReport odd =
        Entries.work("oak", null, null, "melting", List.of(Entries.trial(settings())));
    refusedAt(read(odd), "choice-unknown", "/process");
    assertEquals(Process.SURFACE_ENGRAVING, read(Entries.report()).work().process());
  }

  @Test
  void settingsAndTrialsMayNotBeMissing() {
    refusedAt(read(Entries.with(List.of())), "required", "/settings");
    refusedAt(read(Entries.with((WrittenSettings) null)), "required", "/settings");
    refusedAt(read(Entries.with(settings(null, "10 mm/s", null))), "required", "/settings/power");
  }

  private static WrittenReport withLaser(UUID machine, WrittenLaser laser) {
    return new WrittenReport(
        machine,
        laser,
        WrittenWork.of("surface engraving").with(WorkProperty.MATERIAL, "birch plywood"),
        List.of(Entries.trial(settings())),
        null,
        null);
  }
}
