package club.emberwell.api.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import club.emberwell.laser.Effect;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.Particulars;
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
  record Sent(UUID id, @JsonUnwrapped Particulars particulars, WrittenQuantity speed) {}

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
            "{\"lot\": \"7\", \"speed\": {\"value\": 0.10, \"unit\": \"mm/s\"}}", Sent.class);
    assertEquals(new Particulars(null, "7", null), sent.particulars());
    assertEquals(new WrittenQuantity(null, new BigDecimal("0.10"), "mm/s"), sent.speed());
    assertEquals(
        "{\"id\":null,\"lot\":\"7\",\"speed\":null}",
        json.writeValueAsString(new Sent(null, sent.particulars(), null)));
  }

  @Test
  void aFieldThatNoPartKnowsIsRefusedAtItsPlace() {
    UnrecognizedPropertyException unknown =
        assertThrows(
            UnrecognizedPropertyException.class,
            () -> json.readValue("{\"lot\": \"7\", \"particulars\": {}}", Sent.class));
    assertEquals(List.of("particulars"), names(unknown.getPath()));
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
