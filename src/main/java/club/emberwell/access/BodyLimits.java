package club.emberwell.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.MediaType;
import java.util.regex.Pattern;

/**
 * How many bytes may be sent where: the one list of it. What else the server takes is bounded by
 * {@code quarkus.http.limits}, for what none of our addresses answers.
 */
@ConfigMapping(prefix = "emberwell.limits.body")
public interface BodyLimits {
  /** A form that takes photos: three of 10 MB and some, and what is written beside them. */
  @WithDefault("33554432")
  long photos();

  /** One picture of 10 MB, alone or as a part of a form. */
  @WithDefault("11534336")
  long picture();

  /** Any other form; its longest text has 64 kB. */
  @WithDefault("1048576")
  long form();

  /** Any other body for a program; a report of a large grid has 60 kB. */
  @WithDefault("262144")
  long json();

  /** What of this holds for a request, bytes. */
  default long of(RoutingContext request) {
    return of(request.normalizedPath(), request.request().getHeader("Content-Type"));
  }

  /**
   * The same of a path as it is routed.
   *
   * @param type of the body; null = not said
   */
  default long of(String path, String type) {
    boolean json = type != null && type.startsWith(MediaType.APPLICATION_JSON);
    if (!json && Taken.PICTURE.matcher(path).matches()) {
      return picture();
    }
    if (ApiPaths.isApi(path)) {
      return json();
    }
    return Taken.PHOTOS.matcher(path).matches() ? photos() : form();
  }

  /** Where pictures are taken. */
  final class Taken {
    private static final Pattern PICTURE =
        Pattern.compile(
            "/api/v1/(reports|questions|answers)/[^/]+/photos|(/api/v1)?/grids/[^/]+/photo");

    private static final Pattern PHOTOS =
        Pattern.compile(
            "/post|/reports/[^/]+/(repeat|edit|photos)|/talk/[^/]+/photos"
                + "|/ask/new|/ask/[^/]+/answers");

    private Taken() {}
  }
}
