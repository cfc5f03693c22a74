package club.emberwell.member.session;

import club.emberwell.member.MemberLimits;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a browser calls itself (RFC 9110, 10.1.5), in words that its owner knows it by. Only the
 * common families are told, and only as far as they tell themselves: one that passes for another is
 * taken at its word.
 */
final class BrowserWords {
  /** What is said of everything else, programs among them. */
  static final String UNKNOWN = "A browser we don't know";

  private static final String ANY_BROWSER = "a browser we don't know";

  /** Kinds of devices; the first whose mark is met counts. */
  private enum Device {
    IPHONE("Phone (iPhone)", "\\(iPhone"),
    IPAD("Tablet (iPad)", "\\(iPad"),
    PHONE("Phone (Android)", "Android.*Mobile"),
    TABLET("Tablet (Android)", "Android"),
    WINDOWS("Computer (Windows)", "Windows NT"),
    CHROME_OS("Computer (ChromeOS)", "CrOS"),
    // newer tablets pass for computers here
    APPLE("Mac or iPad", "Macintosh.*Version/\\S+ Safari/"),
    MAC("Computer (Mac)", "Macintosh"),
    LINUX("Computer (Linux)", "Linux|X11");

    private final String words;
    private final Pattern mark;

    Device(String words, String mark) {
      this.words = words;
      this.mark = Pattern.compile(mark);
    }
  }

  /** Families of browsers; the first counts, since most name those they descend from as well. */
  private enum Family {
    FIREFOX("Firefox", "Firefox/|FxiOS/"),
    EDGE("Edge", "Edg(A|iOS)?/"),
    OPERA("Opera", "OPR/|OPT/"),
    VIVALDI("Vivaldi", "Vivaldi/"),
    SAMSUNG("Samsung Internet", "SamsungBrowser/"),
    CHROMIUM("Chromium", "Chromium/|HeadlessChrome/"),
    CHROME("Chrome", "Chrome/|CriOS/"),
    SAFARI("Safari", "Version/\\S+ (Mobile/\\S+ )?Safari/");

    private final String words;
    private final Pattern mark;

    Family(String words, String mark) {
      this.words = words;
      this.mark = Pattern.compile(mark);
    }
  }

  private BrowserWords() {}

  /**
   * E.g. {@code Phone (Android), Firefox}.
   *
   * @param agent as the browser sent it
   */
  static String of(String agent) {
    if (agent == null || !agent.startsWith("Mozilla/")) {
      return UNKNOWN;
    }
    Optional<String> device =
        Arrays.stream(Device.values())
            .filter(each -> each.mark.matcher(agent).find())
            .findFirst()
            .map(each -> each.words);
    Optional<String> family =
        Arrays.stream(Family.values())
            .filter(each -> each.mark.matcher(agent).find())
            .findFirst()
            .map(each -> each.words);
    return device
        .map(where -> where + ", " + family.orElse(ANY_BROWSER))
        .or(() -> family)
        .orElse(UNKNOWN);
  }

  /** What is stored of it: no control characters, not too long, never empty. */
  static String kept(String agent) {
    String clean =
        agent == null
            ? ""
            : agent
                .codePoints()
                .filter(c -> c >= ' ' && c < 0xD800)
                .limit(MemberLimits.AGENT_MAX)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    return clean.isBlank() ? "a browser" : clean;
  }
}
