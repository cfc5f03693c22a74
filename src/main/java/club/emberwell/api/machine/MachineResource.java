package club.emberwell.api.machine;

import club.emberwell.api.eyewear.EyeProtectionJson;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.bench.Machine;
import club.emberwell.bench.MachineReader;
import club.emberwell.bench.Machines;
import club.emberwell.bench.Machines.Kept;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.ReportService;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** My machines. */
@Path(MachineResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Machines")
public class MachineResource {
  static final String PATH = "/api/v1/machines";

  private final Machines machines;
  private final ReportService reports;
  private final OwnEyewear eyewear;
  private final ApiRequest request;

  MachineResource(
      Machines machines, ReportService reports, OwnEyewear eyewear, ApiRequest request) {
    this.machines = machines;
    this.eyewear = eyewear;
    this.reports = reports;
    this.request = request;
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "createMachine",
      summary = "Add a machine",
      description =
          "divergence is the full angle, at 1/e2, by which the beam widens without a lens. From it"
              + " follows how far the straight beam is too strong; without it nobody guesses.")
  @APIResponseSchema(value = MachineJson.class, responseCode = "201")
  public Response add(MachineRequest sent) {
    return request.once(
        sent,
        () -> {
          Kept kept = machines.add(request.actor(), sent.id(), sent.written(), NumberStyle.ANY);
          return answer(Response.created(URI.create(PATH + "/" + kept.machine().id())), kept);
        });
  }

  @GET
  @Operation(operationId = "listMachines", summary = "My machines")
  public ListJson<MachineJson> list() {
    return ListJson.of(
        machines.of(request.actor()).stream()
            .map(machine -> MachineJson.of(machine, noticed(machine).remarks()))
            .toList());
  }

  @GET
  @Path("models")
  @Operation(
      operationId = "listMachineModels",
      summary = "Models to suggest for a machine",
      description = "Those of machines that reports tell everybody of, and of one's own.")
  public ListJson<String> models() {
    return ListJson.of(reports.machineModels(request.actor()));
  }

  @GET
  @Path("lenses")
  @Operation(
      operationId = "listLenses",
      summary = "Lenses that machines often have, with the spot size that follows",
      description =
          "Calculated by d = 4 M2 wavelength f / (pi D), never measured: M2 is the usual one of the"
              + " source. A machine with lens and inputBeam and without beamDiameter gets the"
              + " same.")
  public ListJson<LensJson> lenses() {
    return ListJson.of(LensJson.all());
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getMachine", summary = "One of my machines")
  @APIResponseSchema(value = MachineJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), noticed(machines.get(request.actor(), id)));
  }

  @GET
  @Path("{id}/eye-protection")
  @Operation(
      operationId = "getEyeProtection",
      summary = "What is calculated for the eyes beside a machine, and how my glasses stand to it",
      description =
          "Calculated minimums for an accidental look into the full rated power, never a promise:"
              + " ask a laser safety officer; local rules decide. Where the tables are silent there"
              + " is no number.")
  public EyeProtectionJson eyes(@PathParam("id") UUID id) {
    return EyeProtectionJson.of(
        EyeProtection.of(
            machines.get(request.actor(), id), eyewear.of(request.actor()), NumberStyle.ANY));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "updateMachine",
      summary = "Describe a machine anew",
      description = "Reports made with it keep the laser as it was. Needs If-Match.")
  @APIResponseSchema(value = MachineJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, MachineRequest sent) {
    return answer(
        Response.ok(),
        machines.revise(request.actor(), id, request.version(), sent.written(), NumberStyle.ANY));
  }

  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "deleteMachine",
      summary = "Take a machine off the bench",
      description = "Reports made with it keep its name and laser.")
  public void delete(@PathParam("id") UUID id) {
    machines.delete(request.actor(), id);
  }

  private static Kept noticed(Machine machine) {
    return new Kept(
        machine, MachineReader.read(machine.written(), machine.numberStyle()).remarks());
  }

  private static Response answer(Response.ResponseBuilder response, Kept kept) {
    return ApiRequest.answer(
        response, kept.machine().version(), MachineJson.of(kept.machine(), kept.remarks()));
  }
}
