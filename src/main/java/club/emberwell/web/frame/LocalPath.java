package club.emberwell.web.frame;

import java.net.URI;

/** Where to go after a form: a path of this site and nothing else. */
public final class LocalPath {
  private static final int LONGEST = 2000;

  private LocalPath() {}

  /** The wanted path if it is one of ours, else the fallback; never another host. */
  public static URI of(String wanted, String fallback) {
    if (wanted == null
        || wanted.length() > LONGEST
        || !wanted.startsWith("/")
        || wanted.startsWith("//")
        || wanted.chars().anyMatch(c -> c == '\\' || c <= ' ' || c == 0x7f)) {
      return URI.create(fallback);
    }
    try {
      return URI.create(wanted);
    } catch (IllegalArgumentException e) {
      return URI.create(fallback);
    }
  }
}
