package club.emberwell.api.card;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.ReportJson.WorkJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.card.JobCard;
import club.emberwell.card.StandingLine;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.fixture.Positions;
import club.emberwell.laser.safety.Coverage.Cover;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A revision of a recipe for whoever stands at the machine. It names nothing else of its owner.
 *
 * @param checklist to go through before the job; the standing lines first
 * @param cautions of the work, bans first; never says that something is safe
 * @param eyes left out where the machine was removed
 */
@Schema(name = "JobCard")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CardJson(
    @JsonUnwrapped Which which,
    List<LineJson> checklist,
    @JsonUnwrapped On on,
    @JsonUnwrapped WorkJson work,
    SettingsJson settings,
    @JsonUnwrapped How how,
    List<CautionJson> cautions,
    @Nullable EyesJson eyes) {
  /**
   * Which revision of the recipe.
   *
   * @param newest where it is higher than version, the recipe was changed since
   * @param at when this revision was written
   */
  @Schema(name = "JobCardWhich")
  record Which(String title, int version, int newest, Instant at) {}

  /**
   * A line before the job.
   *
   * @param standing which of the lines of every card; left out of the owner's own
   */
  @Schema(name = "JobCardLine")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LineJson(@Nullable StandingLine standing, String sentence) {}

  /**
   * On what it is done.
   *
   * @param machine what its owner calls it; left out where it was removed
   * @param room left out where there is none
   */
  @Schema(name = "JobCardOn")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record On(@Nullable String machine, LaserJson laser, @Nullable String room) {}

  /**
   * How it is done.
   *
   * @param steps in order
   */
  @Schema(name = "JobCardHow")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record How(@Nullable FixtureOf fixture, List<String> steps) {}

  /**
   * What the piece lies in.
   *
   * @param kept where it is kept
   * @param position left out where pieces lie in all of them
   */
  @Schema(name = "JobCardFixture")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FixtureOf(
      String name, @Nullable String kept, int positions, @Nullable PlaceJson position) {
    static FixtureOf of(JobCard.Lying lies) {
      return lies == null
          ? null
          : new FixtureOf(
              lies.fixture().title(),
              lies.fixture().written().place(),
              lies.fixture().positions().places().size(),
              PlaceJson.of(lies.place()));
    }
  }

  /**
   * One position.
   *
   * @param number counted from 1 row by row
   * @param x from the left edge to the middle of the piece
   * @param y from the upper edge
   */
  @Schema(name = "JobCardPosition")
  record PlaceJson(int number, int row, int column, QuantityJson x, QuantityJson y) {
    static PlaceJson of(Positions.Place place) {
      return place == null
          ? null
          : new PlaceJson(
              place.number(),
              place.row(),
              place.column(),
              QuantityJson.of(QuantityKind.LENGTH, place.x()),
              QuantityJson.of(QuantityKind.LENGTH, place.y()));
    }
  }

  /**
   * What is calculated for the eyes.
   *
   * @param glasses of the owner, the worst first
   * @param opticalDensity needed at least; left out where there is no number
   * @param closing always true of it
   */
  @Schema(name = "JobCardEyes")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record EyesJson(
      List<GlassesJson> glasses,
      @Nullable BigDecimal opticalDensity,
      List<String> warnings,
      String closing) {
    static EyesJson of(EyeProtection eyes) {
      return eyes == null
          ? null
          : new EyesJson(
              eyes.fits().stream()
                  .map(
                      fit ->
                          new GlassesJson(
                              fit.glasses().name(),
                              fit.coverage().verdict(),
                              fit.coverage().because()))
                  .toList(),
              QuantityJson.number(eyes.minima().density()),
              eyes.warnings(),
              EyeLimits.CLOSING);
    }
  }

  /**
   * How a pair stands to the machine.
   *
   * @param sentence both numbers, or what is missing
   */
  @Schema(name = "JobCardGlasses")
  record GlassesJson(String name, Cover verdict, String sentence) {}

  static CardJson of(JobCard card, ReportViews words) {
    return new CardJson(
        new Which(
            card.title(),
            card.version(),
            card.past().recipe().version(),
            card.past().revision().at()),
        card.before().stream().map(line -> new LineJson(line.standing(), line.sentence())).toList(),
        new On(
            card.eyes().machine() == null ? null : card.eyes().machine().name(),
            LaserJson.of(card.past().read().laser()),
            card.room() == null ? null : card.room().name()),
        words.work(
            card.work(),
            card.past().read().laser().source(),
            card.past().revision().written().work()),
        SettingsJson.of(card.settings().settings(), card.past().revision().written().settings()),
        new How(FixtureOf.of(card.lies()), card.past().revision().written().job().lines()),
        card.cautions().stream().map(CautionJson::of).toList(),
        EyesJson.of(card.eyes().protection()));
  }
}
