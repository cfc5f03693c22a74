package club.emberwell.web.photo;

import club.emberwell.member.Role;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The photos of questions and answers; a class of its own, for another has all of /talk/{id}. */
@Path("/talk/{id}/photos")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class TalkPhotoPages {
  private final PhotoPages photos;

  TalkPhotoPages(PhotoPages photos) {
    this.photos = photos;
  }

  @GET
  public TemplateInstance ofTalk(@RestPath UUID id, @RestQuery String done) {
    return photos.album(id, done);
  }

  @POST
  public Uni<Response> addToTalk(@RestPath UUID id, SentForm sent) {
    return photos.add(id, sent);
  }
}
