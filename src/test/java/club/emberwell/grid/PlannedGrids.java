package club.emberwell.grid;

import club.emberwell.access.People.Person;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.quantity.NumberStyle;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Grids for tests: speed down (20, 30, ... mm/s), power across (30, 40, ... %), 10 W diode, slate.
 */
@ApplicationScoped
public class PlannedGrids {
  private static final List<String> SPEEDS =
      List.of("20 mm/s", "30 mm/s", "40 mm/s", "50 mm/s", "60 mm/s");
  private static final List<String> POWERS =
      List.of("30 %", "40 %", "50 %", "60 %", "70 %", "80 %", "90 %", "100 %");

  @Inject GridService grids;
  @Inject Members members;
  @Inject ObjectMapper json;

  /** The id of a new grid of two rows. */
  public String plan(Person person, int columns) {
    return plan(members.byId(UUID.fromString(person.id())).orElseThrow().actor(), columns);
  }

  public String plan(Actor actor, int columns) {
    return plan(actor, columns, 2);
  }

  public String plan(Actor actor, int columns, int rows) {
    Map<String, Object> body = new HashMap<>();
    body.put("name", "Slate on a rainy day");
    body.put(
        "laser",
        Map.of(
            "source", "diode", "wavelength", "455 nm", "ratedPower", "10 W", "motion", "gantry"));
    body.put("material", "slate");
    body.put("process", "surface-engraving");
    body.put("settings", Map.of("lineSpacing", "0.1 mm"));
    body.put(
        "axes",
        Map.of(
            "across",
            Map.of("setting", "power", "values", POWERS.subList(0, columns)),
            "down",
            Map.of("setting", "speed", "values", SPEEDS.subList(0, rows))));
    WrittenGrid written = json.convertValue(body, WrittenGrid.class);
    GridPosting posting = new GridPosting(null, written, NumberStyle.ANY);
    return grids.save(actor, posting).grid().id().toString();
  }

  public void withdraw(Person person, String grid) {
    Actor actor = members.byId(UUID.fromString(person.id())).orElseThrow().actor();
    grids.withdraw(actor, UUID.fromString(grid), null);
  }
}
