package club.emberwell.access.problem;

import jakarta.ws.rs.core.Response;

/**
 * Shows problems in the form that suits who asked. The first bean that claims a path is asked; the
 * JSON form takes what nobody claims.
 */
public interface ErrorRenderer {
  /**
   * @param path as routed, e.g. {@code /api/v1/me}
   */
  boolean claims(String path);

  /** The status and the headers of the problem are set by the caller. */
  Response.ResponseBuilder render(Problem problem);
}
