package club.emberwell.api.consensus;

import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.Next;
import club.emberwell.consensus.answer.Start;
import club.emberwell.consensus.answer.Whole;
import club.emberwell.consensus.answer.Why;
import club.emberwell.consensus.factor.MachineFactor;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.report.ReportBrief;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What the trials come to for one reader. Doses are in the unit of the range's.
 *
 * @param start what to set first on the machine asked about
 * @param refusal why nothing may be carried over to it
 * @param wholes right trials of different other members, machines like the reader's first
 * @param right the reader's own right trial on this machine
 * @param next what to try after own trials that failed
 * @param factor where the machine did not do this work right yet
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "WhatToTry")
record AnswerJson(
    @Nullable StartJson start,
    @Nullable List<String> refusal,
    List<WholeJson> wholes,
    @Nullable WholeJson right,
    @Nullable NextJson next,
    @Nullable FactorJson factor) {

  /**
   * How the reader's machine stands to those of others in the same band and regime.
   *
   * @param factor 1.2 = it takes 1.2 times the dose of others
   * @param low of its 95 % interval
   * @param works shared with others
   * @param times this machine's dose for this work over the middle
   */
  @Schema(name = "MachineFactor")
  record FactorJson(
      BigDecimal factor,
      BigDecimal low,
      BigDecimal high,
      int works,
      BigDecimal times,
      String sentence) {
    static FactorJson of(OnThisWork known) {
      MachineFactor found = known.factor();
      return new FactorJson(
          QuantityJson.number(found.factor()),
          QuantityJson.number(found.interval().low()),
          QuantityJson.number(found.interval().high()),
          found.works(),
          QuantityJson.number(known.times()),
          found.sentence());
    }
  }

  /**
   * Where to begin; never a recommendation.
   *
   * @param dose what the settings give
   * @param basis middle, machine-factor, one-trial or borrowed: where the dose comes from
   * @param sure false for a rough start
   * @param lowered whether the power is lower since the machine runs no faster
   */
  @Schema(name = "Start")
  record StartJson(
      SettingsJson settings,
      BigDecimal dose,
      Start.Basis basis,
      boolean sure,
      List<ReasonJson> reasons,
      boolean lowered) {
    static StartJson of(Start start) {
      return new StartJson(
          SettingsJson.of(start.settings(), null),
          QuantityJson.number(start.dose()),
          start.basis(),
          !start.rough(),
          start.why().stream().map(why -> new ReasonJson(why, why.sentence())).toList(),
          start.lowered());
    }
  }

  /** One thing that makes a start rough. */
  @Schema(name = "RoughBecause")
  record ReasonJson(Why code, String sentence) {}

  /**
   * A right trial with all that was set.
   *
   * @param trial its place in the report, 0 = first
   * @param quality 1 to 5; left out where nobody said
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "WholeSettings")
  record WholeJson(
      UUID report,
      int trial,
      MemberJson member,
      SettingsJson settings,
      BigDecimal dose,
      @Nullable Integer quality) {
    static Optional<WholeJson> of(Whole whole, Map<Long, ReportBrief> reports) {
      return Optional.ofNullable(reports.get(whole.made().report()))
          .map(
              report ->
                  new WholeJson(
                      report.id(),
                      whole.made().trial(),
                      MemberJson.of(report.maker().id(), report.maker().handle()),
                      SettingsJson.of(whole.settings(), null),
                      QuantityJson.number(whole.dose()),
                      whole.quality()));
    }
  }

  /**
   * What to try next.
   *
   * @param tooLittle the highest own dose that was too little
   * @param tooMuch the lowest own dose that was too much
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "NextTry")
  record NextJson(
      SettingsJson settings,
      BigDecimal dose,
      @Nullable BigDecimal tooLittle,
      @Nullable BigDecimal tooMuch,
      boolean contradicting) {
    static NextJson of(Next next) {
      return new NextJson(
          SettingsJson.of(next.settings(), null),
          QuantityJson.number(next.dose()),
          QuantityJson.number(next.tooLittle()),
          QuantityJson.number(next.tooMuch()),
          next.contradicting());
    }
  }

  static AnswerJson of(Answer answer, Map<Long, ReportBrief> reports) {
    return new AnswerJson(
        answer.start().map(StartJson::of).orElse(null),
        answer.refusal().isEmpty() ? null : answer.refusal(),
        answer.wholes().stream().flatMap(whole -> WholeJson.of(whole, reports).stream()).toList(),
        answer.right().flatMap(whole -> WholeJson.of(whole, reports)).orElse(null),
        answer.next().map(NextJson::of).orElse(null),
        answer.factor().map(FactorJson::of).orElse(null));
  }

  /** The reports an answer names. */
  static Stream<Long> reports(Answer answer) {
    return Stream.concat(answer.wholes().stream(), answer.right().stream())
        .map(whole -> whole.made().report());
  }
}
