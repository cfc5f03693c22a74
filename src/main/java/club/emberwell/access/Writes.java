package club.emberwell.access;

import jakarta.ws.rs.container.ContainerRequestContext;
import java.lang.reflect.Method;
import java.util.Set;

/** Which requests write: all but those that read by their method or say so. */
final class Writes {
  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

  private Writes() {}

  static boolean does(ContainerRequestContext request, Method route) {
    return !READING.contains(request.getMethod()) && !route.isAnnotationPresent(ReadsOnly.class);
  }
}
