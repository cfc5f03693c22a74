package club.emberwell.access;

import club.emberwell.access.problem.Problems;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Versions as entity tags (RFC 9110, sections 8.8.3 and 13.1.1). */
public final class Etags {
  private static final Pattern STRONG = Pattern.compile("\"(\\d{1,18})\"");

  private Etags() {}

  /** The tag of a version, quotes included. */
  public static String of(long version) {
    return "\"" + version + "\"";
  }

  /**
   * The version the client read.
   *
   * @throws ProblemException 428 where If-Match is missing, 412 where it cannot be one of ours
   */
  public static int required(RoutingContext request) {
    String header = request.request().getHeader(HttpHeaders.IF_MATCH);
    if (header == null || header.isBlank()) {
      throw Problems.conditionMissing().exception();
    }
    Matcher tag = STRONG.matcher(header.strip());
    if (!tag.matches()) {
      throw Problems.changed().exception();
    }
    return (int) Math.min(Long.parseLong(tag.group(1)), Integer.MAX_VALUE);
  }

  /** The same where the client may leave it out; null then. */
  public static Integer given(RoutingContext request) {
    return request.request().getHeader(HttpHeaders.IF_MATCH) == null ? null : required(request);
  }
}
