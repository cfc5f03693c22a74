package club.emberwell.card;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.card.JobCard.Eyes;
import club.emberwell.card.JobCard.Line;
import club.emberwell.card.JobCard.Lying;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.fixture.Fixture;
import club.emberwell.fixture.Fixtures;
import club.emberwell.fixture.Positions;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.Revisions;
import club.emberwell.recipe.Revisions.Past;
import club.emberwell.recipe.WrittenJob;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.room.Room;
import club.emberwell.room.Rooms;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Puts the job cards of a member's recipes together. */
@ApplicationScoped
public class JobCards {
  private final Recipes recipes;
  private final Revisions revisions;
  private final Machines machines;
  private final OwnEyewear eyewear;
  private final Fixtures fixtures;
  private final Rooms rooms;
  private final KeptPhotos photos;
  private final CatalogService catalog;

  @SuppressWarnings("ParameterNumber") // a card says something of each
  JobCards(
      Recipes recipes,
      Revisions revisions,
      Machines machines,
      OwnEyewear eyewear,
      Fixtures fixtures,
      Rooms rooms,
      KeptPhotos photos,
      CatalogService catalog) {
    this.recipes = recipes;
    this.revisions = revisions;
    this.machines = machines;
    this.eyewear = eyewear;
    this.fixtures = fixtures;
    this.rooms = rooms;
    this.photos = photos;
    this.catalog = catalog;
  }

  /**
   * The card of one of the owner's recipes.
   *
   * @param version of the recipe; null = the newest
   * @param style in which what is calculated writes its numbers
   * @throws EntryUnknown where there is no such recipe or revision
   */
  @Transactional
  public JobCard of(Actor owner, UUID recipe, Integer version, NumberStyle style) {
    int newest = recipes.get(owner, recipe).version();
    Past past = revisions.past(owner, recipe, version == null ? newest : version);
    WrittenJob job = past.revision().written().job();
    Machine machine =
        machines.find(owner.memberId(), past.revision().written().machine()).orElse(null);
    Room room = job.room() == null ? null : rooms.find(owner, job.room()).orElse(null);
    return new JobCard(
        past,
        before(past, machine, room),
        new Eyes(
            machine, machine == null ? null : EyeProtection.of(machine, eyewear.of(owner), style)),
        lying(owner, job),
        room,
        ReportCautions.of(
            past.read().work(), past.read().laser().source(), catalog.snapshot().cautions()));
  }

  private static List<Line> before(Past past, Machine machine, Room room) {
    List<Line> lines = new ArrayList<>();
    double watts = (machine == null ? past.read().laser() : machine.laser()).ratedPowerW();
    for (StandingLine line : StandingLine.values()) {
      lines.add(new Line(line, line.at(machine == null ? null : machine.housing(), watts)));
    }
    if (room != null) {
      room.values().lines().forEach(own -> lines.add(new Line(null, own)));
    }
    return List.copyOf(lines);
  }

  private Lying lying(Actor owner, WrittenJob job) {
    Fixture fixture =
        job.fixture() == null ? null : fixtures.find(owner, job.fixture()).orElse(null);
    if (fixture == null) {
      return null;
    }
    // a fixture may have fewer positions by now
    Positions.Place place =
        fixture.positions().places().stream()
            .filter(one -> job.position() != null && one.number() == job.position())
            .findFirst()
            .orElse(null);
    return new Lying(fixture, place, photos.of(fixture.id()).orElse(null));
  }
}
