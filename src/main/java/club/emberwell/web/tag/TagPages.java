package club.emberwell.web.tag;

import club.emberwell.entry.EntryKind;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.tag.Tagged;
import club.emberwell.tag.Tags;
import club.emberwell.web.frame.Pages;
import io.quarkus.security.UnauthorizedException;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;

/** The address a label's square holds. */
@Path("/t")
@Blocking
@RolesAllowed(Role.READ)
public class TagPages extends Pages {
  private final Tags tags;

  TagPages(Tags tags) {
    this.tags = tags;
  }

  /**
   * Leads the owner to the thing and others to its report, where there is one; whoever is not
   * signed in may be the owner.
   */
  @GET
  @Path("{code}")
  public Response follow(@RestPath String code) {
    Actor actor = actor();
    Tagged tagged = tags.find(code);
    if (actor.is(tagged.author()) || !tagged.kind().isPrivate()) {
      return to(tagged.path());
    }
    return tags.report(tagged)
        .map(report -> to(EntryKind.REPORT.path(report, null)))
        .orElseThrow(
            () -> actor.signedIn() ? new EntryUnknown("tag") : new UnauthorizedException());
  }
}
