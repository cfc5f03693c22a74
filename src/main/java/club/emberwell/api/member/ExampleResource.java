package club.emberwell.api.member;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.exchange.example.Example;
import club.emberwell.exchange.example.ExampleClub;
import club.emberwell.exchange.example.ExampleState;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The invented club that an owner can look at inside the real one. */
@Path("/api/v1/club/example")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.OWN)
@Tag(name = "Club")
public class ExampleResource {
  private final ExampleClub example;
  private final ApiRequest request;

  ExampleResource(ExampleClub example, ApiRequest request) {
    this.example = example;
    this.request = request;
  }

  /**
   * The example club.
   *
   * @param done while it loads or goes: so many steps of total
   * @param members invented ones that are here now
   * @param reports by invented members
   * @param talk questions, answers and notices by invented members
   * @param removal what removing it does to what real members wrote
   */
  public record ExampleJson(
      ExampleState state,
      int done,
      int total,
      long members,
      long reports,
      long talk,
      RemovalJson removal) {}

  /**
   * What real members wrote to something invented.
   *
   * @param answersKept answers to invented questions; they stay, the question loses its words
   * @param repeatsKept repeats of invented reports; they stay as reports of their own
   * @param commentsRemoved comments under invented reports; they go with those
   */
  public record RemovalJson(long answersKept, long repeatsKept, long commentsRemoved) {}

  @GET
  @Operation(operationId = "getExample", summary = "Where the example club stands")
  public ExampleJson get() {
    return shown(example.get(request.actor()));
  }

  @PUT
  @Fails(ProblemKind.STATE_FORBIDS)
  @Operation(
      operationId = "loadExample",
      summary = "Load the example club",
      description =
          "Loads in the background; ask for it again to see how far it is. Names of its members end"
              + " in -invented, and nobody can sign in as one. Where it is, nothing changes.")
  public ExampleJson load() {
    example.load(request.actor());
    return get();
  }

  @DELETE
  @Operation(
      operationId = "removeExample",
      summary = "Remove the example club",
      description =
          "Removes all that is invented in the background. What real members wrote stays, but for"
              + " comments under invented reports. Where there is none, nothing changes.")
  public ExampleJson remove() {
    example.remove(request.actor());
    return get();
  }

  private static ExampleJson shown(Example here) {
    return new ExampleJson(
        here.state(),
        here.done(),
        here.total(),
        here.invented().members(),
        here.invented().reports(),
        here.invented().talk(),
        new RemovalJson(here.kept().answers(), here.kept().repeats(), here.kept().comments()));
  }
}
