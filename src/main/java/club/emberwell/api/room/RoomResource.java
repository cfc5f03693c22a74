package club.emberwell.api.room;

import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.room.Room;
import club.emberwell.room.RoomPosting;
import club.emberwell.room.Rooms;
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

/** One's own rooms; nobody else's can be seen. */
@Path(RoomResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Rooms")
public class RoomResource {
  static final String PATH = "/api/v1/rooms";

  private final Rooms rooms;
  private final ApiRequest request;

  RoomResource(Rooms rooms, ApiRequest request) {
    this.rooms = rooms;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listRooms", summary = "My rooms, in the order they were added")
  public ListJson<WorkroomJson> list() {
    return ListJson.of(rooms.of(request.actor()).stream().map(WorkroomJson::of).toList());
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addRoom",
      summary = "Write down a room with its air and checks",
      description = "Needs an Idempotency-Key.")
  @APIResponseSchema(value = WorkroomJson.class, responseCode = "201")
  public Response add(RoomRequest sent) {
    return request.once(
        sent,
        () -> {
          Room room =
              rooms.add(
                  request.actor(), new RoomPosting(sent.id(), sent.written(), NumberStyle.ANY));
          return answer(Response.created(URI.create(PATH + "/" + room.id())), room);
        });
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getRoom", summary = "One of my rooms, with what follows for its air")
  @APIResponseSchema(value = WorkroomJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), rooms.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseRoom",
      summary = "Write a room anew",
      description = "Needs If-Match.")
  @APIResponseSchema(value = WorkroomJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, RoomRequest sent) {
    return answer(
        Response.ok(),
        rooms.revise(request.actor(), id, request.version(), sent.written(), NumberStyle.ANY));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawRoom",
      summary = "Remove a room",
      description = "It stays in the history, and its checks are due no more. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    rooms.withdraw(request.actor(), id, request.versionIfGiven());
  }

  @GET
  @Path("{id}/checks")
  @Operation(
      operationId = "listRoomChecks",
      summary = "What is checked in a room, when it was last, and when it is due")
  public ListJson<CheckJson> checks(@PathParam("id") UUID id) {
    return ListJson.of(
        rooms.get(request.actor(), id).values().checks().stream().map(CheckJson::of).toList());
  }

  @Keyed
  @WithEtag
  @POST
  @Path("{id}/checks")
  @Operation(
      operationId = "markRoomChecked",
      summary = "Say that something was checked",
      description = "Of the same day once more it changes nothing. Needs an Idempotency-Key.")
  @APIResponseSchema(value = WorkroomJson.class, responseCode = "200")
  public Response checked(@PathParam("id") UUID id, CheckRequest sent) {
    return request.once(
        sent,
        () -> answer(Response.ok(), rooms.checked(request.actor(), id, sent.check(), sent.on())));
  }

  private static Response answer(Response.ResponseBuilder response, Room room) {
    return ApiRequest.answer(response, room.version(), WorkroomJson.of(room));
  }
}
