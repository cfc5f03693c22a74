package club.emberwell.api.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import club.emberwell.laser.Effect;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.stats.DoseWindow;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What Jackson does with our types. */
class ClubModuleTest {
  private final ObjectMapper json = new ObjectMapper().registerModule(new ClubModule());

  /** Something read in parts. */
  record Sent(
      UUID id,
      @JsonUnwrapped WrittenWork work,
      @JsonUnwrapped Place place,
      WrittenQuantity speed) {}

  /** A part whose fields are its own. */
  record Place(Integer row) {}

  @Test
  void aCodedValueGoesByItsCodeAndAnyOtherByItsName() throws JsonProcessingException {
    assertEquals("\"too-little\"", json.writeValueAsString(Effect.TOO_LITTLE));
    assertEquals("\"10600\"", json.writeValueAsString(WavelengthBand.CO2_10600));
    assertEquals("\"lineSpacing\"", json.writeValueAsString(QuantityKind.LINE_SPACING));
    assertEquals("\"all-right\"", json.writeValueAsString(DoseWindow.State.ALL_RIGHT));
    assertEquals(
        "{\"too-much\":1}", json.writeValueAsString(Map.of(Effect.TOO_MUCH, 1)), "as a key");
    assertEquals(Effect.RIGHT, json.readValue("\"right\"", Effect.class));
  }

  @Test
  void partsAreReadAndWrittenBesideTheOtherFieldsAndLeftOutWhereTheyAreEmpty()
      throws JsonProcessingException {
    Sent sent =
        json.readValue(
            "{\"process\": \"cut\", \"lot\": \"7\", \"row\": 2,"
                + " \"speed\": {\"value\": 0.10, \"unit\": \"mm/s\"}}",
            Sent.class);
    assertEquals(WrittenWork.of("cut").with(WorkProperty.LOT, "7"), sent.work());
    assertEquals(new Place(2), sent.place());
    assertEquals(new WrittenQuantity(null, new BigDecimal("0.10"), "mm/s"), sent.speed());
    assertEquals(
        "{\"id\":null,\"process\":\"cut\",\"lot\":\"7\",\"row\":2,\"speed\":null}",
        json.writeValueAsString(new Sent(null, sent.work(), sent.place(), null)));
  }

  @Test
  void aFieldThatNoPartKnowsIsRefusedAtItsPlace() {
    UnrecognizedPropertyException unknown =
        assertThrows(
            UnrecognizedPropertyException.class,
            () -> json.readValue("{\"lot\": \"7\", \"work\": {}}", Sent.class));
    assertEquals(List.of("work"), names(unknown.getPath()));
    MismatchedInputException wrong =
        assertThrows(
            MismatchedInputException.class,
            () -> json.readValue("{\"notes\": {\"a\": 1}}", Sent.class));
    assertEquals(List.of("notes"), names(wrong.getPath()));
  }

  private static List<String> names(List<JsonMappingException.Reference> path) {
    return path.stream().map(place -> place.getFieldName()).toList();
  }
}
