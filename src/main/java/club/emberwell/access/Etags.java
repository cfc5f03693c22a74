package club.emberwell.access;

import club.emberwell.access.problem.ProblemException;
import club.emberwell.access.problem.Problems;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.OptionalLong;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Versions and other marks of answers as entity tags (RFC 9110, sections 8.8.3 and 13.1).
 *
 * <p>The tag of something that has versions begins with its number: {@code "7"}; where it is read,
 * a hash of the answer follows, as in {@code "7-9f86d081"}, because more stands in an answer than
 * what its version counts: cautions, names, answers to a question.
 */
public final class Etags {
  /** One tag of a list, weak or not; its text in the second group. */
  private static final Pattern TAG = Pattern.compile("(W/)?\"([\\x21\\x23-\\x7E\\x80-\\xFF]*)\"");

  private static final Pattern VERSION = Pattern.compile("(\\d{1,18})(?:[-;.].*)?");

  /** What servers and proxies add to the tag of an answer they compress. */
  private static final Pattern COMPRESSED = Pattern.compile("(?:--?|;)(?:gzip|br|zstd|deflate)$");

  private static final String ANY = "*";

  private Etags() {}

  /** The tag of a version, quotes included. */
  public static String of(long version) {
    return strong(Long.toString(version));
  }

  /** A tag of these very bytes, before anybody packs them. */
  public static String strong(String text) {
    return "\"" + text + "\"";
  }

  /** A weak tag: answers of which it stands mean the same, byte by byte or not. */
  public static String weak(String text) {
    return "W/" + strong(text);
  }

  /**
   * Whether the client holds what this tag stands for. If-None-Match compares weakly: what a proxy
   * that compresses makes of a tag still names the same answer.
   */
  public static boolean held(RoutingContext request, String tag) {
    String header = request.request().getHeader(HttpHeaders.IF_NONE_MATCH);
    if (header == null) {
      return false;
    }
    String own = plain(TAG.matcher(tag).results().findFirst().orElseThrow());
    return header.strip().equals(ANY)
        || TAG.matcher(header).results().map(Etags::plain).anyMatch(own::equals);
  }

  private static String plain(MatchResult tag) {
    return COMPRESSED.matcher(tag.group(2)).replaceFirst("");
  }

  /**
   * The version the client read; of several it names the newest, since versions only rise.
   *
   * <p>RFC 9110 wants a strong comparison here, so that nobody overwrites what merely looks alike.
   * The number is such a strong mark of the state, whatever a proxy did to the tag round it: a
   * {@code W/} or a suffix says that the bytes were packed, not that the version is another. Were
   * these refused, nobody behind such a proxy could ever change anything. {@code *} names no
   * version and so proves nothing about having read one.
   *
   * @throws ProblemException 428 where If-Match names no version, 412 where it names none of ours
   */
  public static int required(RoutingContext request) {
    String header = request.request().getHeader(HttpHeaders.IF_MATCH);
    if (header == null || header.isBlank() || header.strip().equals(ANY)) {
      throw Problems.conditionMissing().exception();
    }
    OptionalLong newest =
        TAG.matcher(header)
            .results()
            .map(tag -> VERSION.matcher(tag.group(2)))
            .filter(version -> version.matches())
            .mapToLong(version -> Long.parseLong(version.group(1)))
            .max();
    long version = newest.orElseThrow(() -> Problems.changed().exception());
    return (int) Math.min(version, Integer.MAX_VALUE);
  }

  /** The same where the client may leave it out or send {@code *}; null then. */
  public static Integer given(RoutingContext request) {
    String header = request.request().getHeader(HttpHeaders.IF_MATCH);
    return header == null || header.strip().equals(ANY) ? null : required(request);
  }
}
