package club.emberwell.api.quantity;

import club.emberwell.access.ReadsOnly;
import club.emberwell.api.view.DerivedJson;
import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Process;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.DoseCalculator;
import club.emberwell.report.reading.DoseCalculator.Answer;
import club.emberwell.report.reading.WrittenSettings;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The dose calculator: what follows from a laser and settings. Nothing is stored. */
@Path("/api/v1/dose")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@PermitAll
@Tag(name = "Quantities")
public class DoseResource {
  /** What to compute with. */
  record DoseRequest(WrittenLaser laser, String process, WrittenSettings settings) {}

  /** The inputs as read, and what follows; all nominal. */
  @Schema(name = "ComputedDose")
  record DoseAnswer(
      LaserJson laser,
      Process process,
      SettingsJson settings,
      DerivedJson derived,
      @JsonUnwrapped Noticed noticed) {}

  @POST
  @ReadsOnly
  @Operation(operationId = "computeDose", summary = "Compute nominal dose and pulse values")
  public DoseAnswer compute(DoseRequest sent) {
    Answer answer =
        DoseCalculator.compute(sent.laser(), sent.process(), sent.settings(), NumberStyle.ANY);
    return new DoseAnswer(
        LaserJson.of(answer.laser()),
        answer.process(),
        SettingsJson.of(answer.settings(), sent.settings()),
        DerivedJson.of(answer.derived()),
        Noticed.of(answer.remarks()));
  }
}
