package club.emberwell.card;

import club.emberwell.bench.Machine;
import club.emberwell.catalog.Caution;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.fixture.Fixture;
import club.emberwell.fixture.Positions;
import club.emberwell.recipe.Revisions.Past;
import club.emberwell.report.photo.KeptPhotos.Kept;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.room.Room;
import java.util.List;

/**
 * A revision of a recipe for whoever stands at the machine. Machine, glasses, fixture and room are
 * as they are now: they are what is there.
 *
 * @param before what is gone through first: the standing lines, then those of the room
 * @param lies null = no fixture, or it was removed
 * @param room null = none, or it was removed
 * @param cautions bans first
 */
public record JobCard(
    Past past, List<Line> before, Eyes eyes, Lying lies, Room room, List<Caution> cautions) {
  /**
   * A line before the job.
   *
   * @param standing null = one of the owner's own
   */
  public record Line(StandingLine standing, String sentence) {}

  /**
   * On which machine, and what that means for the eyes.
   *
   * @param machine null where it was removed; then nothing is calculated
   */
  public record Eyes(Machine machine, EyeProtection protection) {}

  /**
   * Where the piece lies.
   *
   * @param place null = in every position
   * @param photo null = there is none
   */
  public record Lying(Fixture fixture, Positions.Place place, Kept photo) {}

  public String title() {
    return past.name();
  }

  /** Of the recipe, as this card has it. */
  public int version() {
    return past.revision().version();
  }

  public Work work() {
    return past.read().work();
  }

  public TrialSnapshot settings() {
    return past.read().trials().get(0);
  }
}
