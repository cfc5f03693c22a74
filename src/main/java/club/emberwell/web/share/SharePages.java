package club.emberwell.web.share;

import club.emberwell.access.PublicUrl;
import club.emberwell.member.Role;
import club.emberwell.tag.QrCode;
import club.emberwell.web.frame.LocalPath;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.RestQuery;

/** A page's link, to copy or to point a phone at. */
@Path("/share")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class SharePages extends Pages {
  private final PublicUrl url;

  SharePages(PublicUrl url) {
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance share(String back, String link, QrCode square);
  }

  /**
   * @param of path of the page, with its search
   */
  @GET
  public TemplateInstance share(@RestQuery String of) {
    String path = LocalPath.of(of, "/").toString();
    String link = url.of(path);
    return Templates.share(path, link, square(link));
  }

  /** Null where the link is longer than a square can hold. */
  private static QrCode square(String link) {
    try {
      return QrCode.of(link);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }
}
