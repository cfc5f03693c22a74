package club.emberwell.web.grid;

import club.emberwell.grid.next.NextTests;
import club.emberwell.grid.next.Proposal;
import club.emberwell.grid.reading.GridLimits;
import club.emberwell.member.Role;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** What to burn next after a grid, with as many tests as one likes. */
@Path("/grids")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class NextPages extends Pages {
  private final NextTests next;

  NextPages(NextTests next) {
    this.next = next;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance next(Page page);
  }

  /**
   * The page.
   *
   * @param tests as typed
   * @param problem what is wrong with it, or null
   */
  record Page(
      UUID id, String name, WrittenWork work, String tests, String problem, NextView next) {}

  @GET
  @Path("{id}/next")
  public TemplateInstance next(@RestPath UUID id, @RestQuery String tests) {
    String typed = tests == null ? "" : tests.strip();
    Integer wanted = number(typed);
    boolean wrong = wanted == null && !typed.isEmpty();
    Proposal found = next.of(actor(), id, wanted);
    return Templates.next(
        new Page(
            id,
            found.grid().name(),
            found.grid().written().work(),
            wanted == null && !wrong ? Integer.toString(NextTests.USUAL) : typed,
            wrong ? "Ask for %d to %d tests.".formatted(GridLimits.FEWEST, GridLimits.SIDE) : null,
            NextView.of(found, actor().units())));
  }

  /** Null where it is no number of tests. */
  private static Integer number(String typed) {
    if (!typed.matches("\\d{1,3}")) {
      return null;
    }
    int number = Integer.parseInt(typed);
    return number >= GridLimits.FEWEST && number <= GridLimits.SIDE ? number : null;
  }
}
