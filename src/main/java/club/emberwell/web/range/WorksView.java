package club.emberwell.web.range;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.WorkQuery;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles;
import club.emberwell.web.plot.Axis;
import club.emberwell.web.plot.BandLine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Several works under each other, each a line on an axis that all of its kind share; nothing is
 * said of them together.
 *
 * @param sections area work and line work, whose doses are different things
 * @param more address of all of them, or null where these are all
 * @param left how many are not shown
 */
public record WorksView(List<Section> sections, String more, int left) {
  /**
   * Lines that share an axis.
   *
   * @param unit of the doses
   * @param ticks of the axis
   */
  public record Section(String title, String unit, List<Axis.Tick> ticks, List<Line> lines) {}

  /**
   * One work.
   *
   * @param href the answer for it alone
   * @param middle in the reader's unit, or null with few members
   */
  public record Line(
      String href,
      String work,
      String how,
      String evidence,
      String evidenceClass,
      String voices,
      String middle,
      BandLine drawn) {}

  /** Draws what one search met. */
  public record Reader(
      SearchQuery query, Vocabulary vocabulary, UnitPreferences units, String page) {}

  /**
   * @param most lines shown at most, those with most voices
   */
  public static WorksView of(List<Range> ranges, Reader reader, int most) {
    List<Range> shown = ranges.stream().limit(most).toList();
    List<Section> sections =
        Stream.of(Measure.AREAL_DOSE, Measure.LINE_DOSE)
            .map(measure -> section(measure, shown, reader))
            .flatMap(Optional::stream)
            .toList();
    int left = ranges.size() - shown.size();
    return new WorksView(
        sections,
        left == 0 ? null : "/range?" + SearchQueryCodec.write(reader.query().withPage(0)),
        left);
  }

  private static Optional<Section> section(Measure measure, List<Range> all, Reader reader) {
    List<Range> ranges =
        all.stream().filter(range -> Range.doseMeasure(range.key()) == measure).toList();
    if (ranges.isEmpty()) {
      return Optional.empty();
    }
    MeasureText text = new MeasureText(measure, reader.units());
    double[] doses =
        ranges.stream().flatMapToDouble(range -> doses(range.dose())).map(text::value).toArray();
    Axis axis = BandLine.axis(doses);
    List<Line> lines = new ArrayList<>();
    for (Range range : ranges) {
      lines.add(line(range, axis, text, reader));
    }
    return Optional.of(
        new Section(
            measure == Measure.AREAL_DOSE ? "Energy per area" : "Energy per length",
            text.unit(),
            axis.ticks(text::tick),
            lines));
  }

  private static DoubleStream doses(Spread dose) {
    return DoubleStream.concat(
        Arrays.stream(dose.voices().values()),
        dose.nextMember().stream()
            .flatMapToDouble(band -> DoubleStream.of(band.low(), band.high())));
  }

  private static Line line(Range range, Axis axis, MeasureText text, Reader reader) {
    Spread dose = range.dose();
    // below that the one middle is drawn toward relatives, which only its own page looks up
    Optional<Double> middle =
        range.counts().voices() < ConsensusLimits.BORROW_BELOW
            ? Optional.empty()
            : dose.quantiles().map(Quantiles.Seven::median);
    double[] dots =
        middle.isPresent()
            ? new double[0]
            : Arrays.stream(dose.voices().values()).map(text::value).toArray();
    return new Line(
        reader.page()
            + SearchQueryCodec.write(
                WorkQuery.of(reader.query(), range.key(), reader.vocabulary()).withPage(0)),
        range.key().work().words(),
        range.key().process().label() + ", " + range.key().laser(),
        range.evidence().words(),
        RangeView.evidenceClass(range.evidence()),
        RangeView.counted(range.counts().voices(), "member", "members"),
        middle.map(m -> text.measured(m, SpreadView.half(dose))).orElse(null),
        BandLine.of(
            axis,
            middle.map(text::value).orElse(null),
            middle.isEmpty() ? null : dose.nextMember().map(band -> ends(band, text)).orElse(null),
            dots));
  }

  private static double[] ends(Interval band, MeasureText text) {
    return text.ends(band.low(), band.high());
  }
}
