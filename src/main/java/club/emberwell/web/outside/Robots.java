package club.emberwell.web.outside;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where programs that wander through links should not go (RFC 9309): what is nobody's business but
 * a member's, forms, and the searches, whose links lead on without an end. Of these one material or
 * one coating at a time is worth a look.
 */
final class Robots {
  static final String CLOSED =
      """
      User-agent: *
      Disallow: /
      """;

  private static final List<String> SEARCHES = List.of("/?", "/range?");
  private static final List<String> WORTH_A_LOOK = List.of("material=", "coating=");

  private static final List<String> CLOSED_PATHS =
      List.of(
          "/*?page=",
          "/*&page=",
          "/api/",
          "/ask/new",
          "/ask/similar",
          "/ask?",
          "/bench",
          "/cards/",
          "/cautions/",
          "/compare",
          "/confirm/",
          "/data/",
          "/desk",
          "/dose?",
          "/dose/*?",
          "/farewell",
          "/feeds/",
          "/first-owner",
          "/fixtures",
          "/flags",
          "/grids",
          "/inbox",
          "/invitation/",
          "/lots",
          "/eyewear",
          "/rooms",
          "/materials?",
          "/me/",
          "/me$",
          "/notices/new",
          "/notices?",
          "/offline",
          "/post",
          "/q/",
          "/recipes",
          "/reports/*/edit",
          "/reports/*/history",
          "/reports/*/repeat",
          "/reports/*/withdraw",
          "/reset",
          "/samples",
          "/search.csv",
          "/search.json",
          "/sign-in",
          "/sign-up",
          "/suppliers",
          "/t/",
          "/talk/",
          "/waiting",
          "/watches");

  private Robots() {}

  /** Of a club that reads in public. */
  static String open(String sitemap) {
    // the longest rule that fits decides
    Stream<String> searches =
        SEARCHES.stream()
            .flatMap(
                search ->
                    Stream.concat(
                        Stream.of("Disallow: " + search),
                        WORTH_A_LOOK.stream()
                            .flatMap(
                                one ->
                                    Stream.of(
                                        "Allow: " + search + one,
                                        "Disallow: " + search + one + "*&"))));
    return Stream.of(
            Stream.of("User-agent: *"),
            searches,
            CLOSED_PATHS.stream().map(path -> "Disallow: " + path),
            Stream.of("", "Sitemap: " + sitemap))
        .flatMap(lines -> lines)
        .collect(Collectors.joining("\n", "", "\n"));
  }
}
