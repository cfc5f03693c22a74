package club.emberwell.exchange;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.exchange.drawing.Looks;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The files of an invented club, as they travel inside the jar. */
final class ScenarioFiles {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new JavaTimeModule())
          .addModule(
              new SimpleModule().addDeserializer(WrittenQuantity.class, new QuantityAsTyped()))
          .build();

  private static final String TALK = "talk.jsonl";
  private static final String COMMENTS = "comments.jsonl";
  private static final String FLAGS = "desk.jsonl";
  private static final String LOOKS = "looks.csv";
  private static final List<String> STOCK = List.of("stock.jsonl", "stock-made.jsonl");

  private final String folder;
  private final ScenarioGuise guise;

  /**
   * @param folder on the class path, without slashes at the ends
   */
  ScenarioFiles(String folder, ScenarioGuise guise) {
    this.folder = folder;
    this.guise = guise;
  }

  /**
   * @param joined null = when it is loaded
   */
  record Person(String handle, String about, String role, Instant joined) {}

  record OwnedMachine(String owner, WrittenMachine machine) {}

  List<Person> members() {
    return rows(lines("members.csv")).stream().map(ScenarioFiles::person).toList();
  }

  private static Person person(String[] cell) {
    return new Person(cell[0], cell[1], cell[2], cell.length > 6 ? Instant.parse(cell[6]) : null);
  }

  List<OwnedMachine> machines() {
    return rows(lines("machines.csv")).stream().map(ScenarioFiles::machine).toList();
  }

  private static OwnedMachine machine(String[] cell) {
    boolean pulsed = !cell[6].equals("cw");
    String control = cell[12].equals("yes") ? "set-freely" : "follows-repetition-rate";
    return new OwnedMachine(
        cell[0],
        new WrittenMachine(
            cell[1],
            cell[13].isEmpty() ? null : cell[13],
            new WrittenLaser(
                cell[2],
                quantity(cell[3]),
                quantity(cell[4]),
                cell[5],
                cell[6],
                quantity(cell[7]),
                quantity(cell[8])),
            null,
            pulsed ? control : null,
            quantity(cell[11]),
            null,
            List.of()));
  }

  private static WrittenQuantity quantity(String typed) {
    return typed.isEmpty() ? null : WrittenQuantity.of(typed);
  }

  List<ScenarioReport> reports() {
    return objects("reports.jsonl", ScenarioReport.class);
  }

  /** Empty where nobody in the club talks. */
  List<ScenarioTalkLine> talk() {
    return has(TALK) ? objects(TALK, ScenarioTalkLine.class) : List.of();
  }

  /** Empty where nobody comments. */
  List<ScenarioComment> comments() {
    return has(COMMENTS) ? objects(COMMENTS, ScenarioComment.class) : List.of();
  }

  /** Empty where nobody flags anything. */
  List<ScenarioFlag> flags() {
    return has(FLAGS) ? objects(FLAGS, ScenarioFlag.class) : List.of();
  }

  /** How its pictures are drawn; of nothing where none are. */
  Looks looks() {
    return new Looks(has(LOOKS) ? rows(raw(LOOKS)) : List.of());
  }

  /** Empty where nobody keeps anything. */
  List<ScenarioStockLine> stock() {
    return STOCK.stream()
        .filter(this::has)
        .flatMap(file -> objects(file, ScenarioStockLine.class).stream())
        .toList();
  }

  private boolean has(String file) {
    return ScenarioFiles.class.getResource("/" + folder + "/" + file) != null;
  }

  private <T> List<T> objects(String file, Class<T> type) {
    return lines(file).stream()
        .map(
            line -> {
              try {
                return MAPPER.readValue(line, type);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            })
        .toList();
  }

  /** Rows of a semicolon table without comments and heading. */
  private static List<String[]> rows(List<String> lines) {
    List<String[]> rows = new ArrayList<>(lines.stream().map(line -> line.split(";", -1)).toList());
    rows.remove(0);
    return rows;
  }

  private List<String> lines(String file) {
    return raw(file).stream().map(guise::line).toList();
  }

  /** As it stands in the file, whatever the guise. */
  private List<String> raw(String file) {
    String path = "/" + folder + "/" + file;
    try (InputStream in = ScenarioFiles.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalArgumentException("no scenario at " + path);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class QuantityAsTyped extends StdDeserializer<WrittenQuantity> {
    QuantityAsTyped() {
      super(WrittenQuantity.class);
    }

    @Override
    public WrittenQuantity deserialize(JsonParser json, DeserializationContext context)
        throws IOException {
      return WrittenQuantity.of(json.getText());
    }
  }
}
