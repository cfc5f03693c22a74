package club.emberwell.api.quantity;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.RemarkJson;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.remark.Reading;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Reads one quantity as people type it. */
@Path("/api/v1/quantities")
@Produces(MediaType.APPLICATION_JSON)
@PermitAll
@Tag(name = "Quantities")
public class QuantityResource {
  /**
   * The quantity.
   *
   * @param value exact
   */
  @Schema(name = "ReadQuantity")
  record Answer(
      QuantityKind dimension,
      BigDecimal value,
      String unit,
      String written,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<RemarkJson> remarks) {}

  @GET
  @Operation(
      operationId = "readQuantity",
      summary = "Read a quantity",
      description = "An ambiguous text is refused with its possible readings.")
  @Fails({ProblemKind.INVALID_FIELDS, ProblemKind.AMBIGUOUS_QUANTITY})
  public Answer read(@QueryParam("dimension") String dimension, @QueryParam("text") String text) {
    QuantityKind wanted =
        dimension(dimension)
            .orElseThrow(
                () ->
                    Problems.at(
                            ProblemKind.INVALID_PARAMETER,
                            "/dimension",
                            "Choose one of: " + all() + ".")
                        .exception());
    if (text == null) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/text", "Send the text to read.")
          .exception();
    }
    Reading<Quantity> reading = QuantityReader.read(wanted, text).at("/text");
    Quantity quantity =
        reading.value().orElseThrow(() -> Problems.of(reading.remarks()).exception());
    QuantityJson exact =
        new QuantityJson(quantity.value(), wanted.canonicalUnit(), quantity.written());
    return new Answer(
        wanted, exact.value(), exact.unit(), exact.written(), RemarkJson.notes(reading.remarks()));
  }

  private static Optional<QuantityKind> dimension(String code) {
    return Arrays.stream(QuantityKind.values()).filter(d -> d.code().equals(code)).findFirst();
  }

  private static String all() {
    return Arrays.stream(QuantityKind.values())
        .map(QuantityKind::code)
        .collect(Collectors.joining(", "));
  }
}
