package club.emberwell.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.regex.Pattern;

/** Which of the {@link BodyLimits} holds for an address. */
@ApplicationScoped
public class LongestBody {
  private static final Pattern PICTURE =
      Pattern.compile(
          "/api/v1/(reports|questions|answers)/[^/]+/photos|(/api/v1)?/(grids|lots|fixtures)/[^/]+/photo");

  private static final Pattern BENCH_COPY = Pattern.compile("(/api/v1)?/bench/copy");

  private static final Pattern PHOTOS =
      Pattern.compile(
          "/post|/reports/[^/]+/(repeat|edit|photos)|/talk/[^/]+/photos"
              + "|/ask/new|/ask/[^/]+/answers");

  /** Asked late: filters are made before the configuration can be read. */
  private final Instance<BodyLimits> limits;

  LongestBody(Instance<BodyLimits> limits) {
    this.limits = limits;
  }

  /** Of a request, bytes. */
  public long of(RoutingContext request) {
    return of(request.normalizedPath(), request.request().getHeader(HttpHeaders.CONTENT_TYPE));
  }

  /**
   * Of a path as it is routed.
   *
   * @param type of the body; null = not said
   */
  long of(String path, String type) {
    boolean json = type != null && type.startsWith(MediaType.APPLICATION_JSON);
    if (!json && PICTURE.matcher(path).matches()) {
      return limits.get().picture();
    }
    if (!json && BENCH_COPY.matcher(path).matches()) {
      return limits.get().benchCopy();
    }
    if (ApiPaths.isApi(path)) {
      return limits.get().json();
    }
    return PHOTOS.matcher(path).matches() ? limits.get().photos() : limits.get().form();
  }
}
