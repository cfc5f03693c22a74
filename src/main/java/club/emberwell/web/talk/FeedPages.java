package club.emberwell.web.talk;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.talk.watch.Feed;
import club.emberwell.talk.watch.Watches;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/**
 * Feeds of watches. The secret in the address is the leave to read, as feed readers sign in
 * nowhere.
 */
@Path("/feeds")
@Blocking
public class FeedPages {
  private final Watches watches;
  private final ClubOptions club;
  private final PublicUrl url;

  FeedPages(Watches watches, ClubOptions club, PublicUrl url) {
    this.watches = watches;
    this.club = club;
    this.url = url;
  }

  @GET
  @Path("{token}.atom")
  @PermitAll
  @Produces(AtomFeed.TYPE)
  public Response feed(@RestPath String token, @Context Request request) {
    Feed feed = watches.feed(token).orElseThrow(() -> Problems.notFound().exception());
    String self = "/feeds/" + token + ".atom";
    String document = AtomFeed.of(feed, club.clubName(), self, url::of);
    byte[] bytes = document.getBytes(StandardCharsets.UTF_8);
    EntityTag tag = new EntityTag(UUID.nameUUIDFromBytes(bytes).toString());
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
    if (unchanged != null) {
      return unchanged.build();
    }
    return Response.ok(bytes).tag(tag).header("X-Robots-Tag", "noindex").build();
  }
}
