package club.emberwell.web.recipe;

import club.emberwell.fixture.Fixture;
import club.emberwell.fixture.Fixtures;
import club.emberwell.member.Actor;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.recipe.WrittenJob;
import club.emberwell.room.Room;
import club.emberwell.room.Rooms;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/** The fields of a recipe that its job card has beside the settings. */
@ApplicationScoped
class JobFields {
  private static final String FIXTURE = "fixture";
  private static final String POSITION = "position";
  private static final String ROOM = "room";
  private static final String STEPS = "steps";

  /** Digits of a number of positions and some room to see a slip. */
  private static final int DIGITS = 8;

  private final Fixtures fixtures;
  private final Rooms rooms;

  JobFields(Fixtures fixtures, Rooms rooms) {
    this.fixtures = fixtures;
    this.rooms = rooms;
  }

  /** Puts them into a form, with what the member has to choose from. */
  Form into(Form form, Actor actor) {
    return form.named(JobFields::here)
        .add(
            Field.of(STEPS, "Steps")
                .hint("One a line; the job card counts them.")
                .lines()
                .maxLength(RecipeLimits.STEPS * (RecipeLimits.STEP + 1)))
        .add(
            Field.of(FIXTURE, "Fixture")
                .choice("", "none")
                .choices(fixtures.of(actor), f -> f.id().toString(), Fixture::title)
                .folded())
        .add(
            Field.of(POSITION, "Position in the fixture")
                .hint("Its number, row by row. Empty: all positions")
                .inputMode("numeric")
                .maxLength(DIGITS))
        .add(
            Field.of(ROOM, "Room")
                .hint("Its own lines before a job stand on the card.")
                .choice("", "none")
                .choices(rooms.of(actor), r -> r.id().toString(), Room::name)
                .folded());
  }

  /** A remark on one step stands at the field that has them all. */
  private static String here(String said) {
    return said.startsWith(STEPS + ".") ? STEPS : said;
  }

  static WrittenJob written(SentForm sent) {
    return new WrittenJob(
        sent.id(FIXTURE), sent.number(POSITION), sent.id(ROOM), sent.lines(STEPS));
  }

  /** Whether one of them has something in it, or something to correct. */
  static boolean isUsed(Form form) {
    return Stream.of(STEPS, FIXTURE, POSITION, ROOM)
        .map(form::field)
        .anyMatch(field -> field.isFailed() || !field.getValue().isEmpty());
  }

  /** What stands in them. */
  static Map<String, String> values(WrittenJob job) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put(FIXTURE, Objects.toString(job.fixture(), ""));
    values.put(POSITION, Objects.toString(job.position(), ""));
    values.put(ROOM, Objects.toString(job.room(), ""));
    values.put(STEPS, String.join("\n", job.lines()));
    return values;
  }
}
