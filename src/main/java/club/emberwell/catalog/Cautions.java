package club.emberwell.catalog;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which cautions go with a work. Immutable; hazards inherit down the trees of the vocabulary. */
public final class Cautions {
  private static final Set<String> DENIALS = Set.of("no", "non", "not", "without", "ohne", "sans");
  private static final String FREE = "free";

  private final Vocabulary vocabulary;
  private final List<CautionRule> rules;
  private final List<Bound> bound;

  /**
   * A rule with the living terms of its scope: a caution of a merged term goes with its successor.
   */
  private record Bound(CautionRule rule, Set<String> materials, Set<String> coatings) {}

  /** What is in hand: the term and the slugs from it up to the top of its tree. */
  private record Held(Optional<Term> term, Set<String> path) {
    Optional<Term> hit(Set<String> named, boolean exactly) {
      boolean meant =
          exactly
              ? term.map(Term::slug).filter(named::contains).isPresent()
              : path.stream().anyMatch(named::contains);
      return meant ? term : Optional.empty();
    }
  }

  public Cautions(Vocabulary vocabulary, Collection<CautionRule> rules) {
    this.vocabulary = vocabulary;
    this.rules =
        rules.stream()
            .sorted(Comparator.comparing(CautionRule::weight).thenComparing(CautionRule::id))
            .toList();
    this.bound =
        this.rules.stream()
            .map(
                rule ->
                    new Bound(
                        rule,
                        living(TermKind.MATERIAL, rule.scope().materials()),
                        living(TermKind.COATING, rule.scope().coatings())))
            .toList();
  }

  private Set<String> living(TermKind kind, List<String> slugs) {
    return slugs.stream()
        .flatMap(slug -> vocabulary.successor(kind, slug).stream())
        .map(Term::slug)
        .collect(Collectors.toUnmodifiableSet());
  }

  private Held held(TermKind kind, String slug) {
    Set<String> path =
        vocabulary.path(kind, slug).stream().map(Term::slug).collect(Collectors.toSet());
    return new Held(vocabulary.successor(kind, slug), path);
  }

  /** All rules, heaviest first. */
  public List<CautionRule> rules() {
    return rules;
  }

  /**
   * The cautions of a work: bans first, then special care, then notes; specific before general.
   * Null for anything unknown: an unknown process, source or thickness leaves cautions in.
   *
   * @param material slug or null
   * @param coating slug or null
   * @param thicknessMm mm or null
   */
  public List<Caution> forWork(
      String material, String coating, Process process, Double thicknessMm, LaserSource source) {
    Held work = held(TermKind.MATERIAL, material);
    Held surface = held(TermKind.COATING, coating);
    List<Caution> found = new ArrayList<>();
    for (Bound each : bound) {
      CautionScope scope = each.rule().scope();
      Optional<Term> because =
          work.hit(each.materials(), scope.exactly())
              .or(() -> surface.hit(each.coatings(), scope.exactly()));
      if ((scope.isGeneral() || because.isPresent())
          && concerns(scope, process, thicknessMm, source)) {
        found.add(new Caution(each.rule(), because));
      }
    }
    found.sort(
        Comparator.comparing((Caution c) -> c.rule().weight())
            .thenComparing(c -> c.because().isEmpty()));
    return List.copyOf(found);
  }

  /** What is known of one term alone, whatever is done to it: for vocabulary pages. */
  public List<Caution> forTerm(TermKind kind, String slug) {
    String material = kind == TermKind.MATERIAL ? slug : null;
    String coating = kind == TermKind.COATING ? slug : null;
    return forWork(material, coating, null, null, null).stream()
        .filter(caution -> caution.because().isPresent())
        .toList();
  }

  /** Present where the work takes no settings. The parameters are those of {@link #forWork}. */
  public Optional<Ban> ban(String material, String coating, Process process, Double thicknessMm) {
    return forWork(material, coating, process, thicknessMm, null).stream()
        .filter(caution -> caution.rule().isBan())
        .findFirst()
        .map(Ban::of);
  }

  /**
   * Present where a text that resolved to no term still names something prohibited ("red vinyl
   * sticker"). A denial beside the word ("PVC-free", "no vinyl") is believed.
   */
  public Optional<Ban> banInText(String text, Process process, Double thicknessMm) {
    String cut = text.length() > CatalogLimits.TEXT ? text.substring(0, CatalogLimits.TEXT) : text;
    List<String> words = vocabulary.folding().words(cut);
    for (int length = Math.min(words.size(), CatalogLimits.SCREENED_WORDS); length > 0; length--) {
      for (int from = 0; from + length <= words.size(); from++) {
        if (denied(words, from, from + length)) {
          continue;
        }
        String piece = String.join(" ", words.subList(from, from + length));
        Optional<Ban> ban = banOf(piece, process, thicknessMm);
        if (ban.isPresent()) {
          return ban;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Ban> banOf(String piece, Process process, Double thicknessMm) {
    for (String slug : vocabulary.holders(TermKind.MATERIAL, piece)) {
      Optional<Ban> ban = ban(slug, null, process, thicknessMm);
      if (ban.isPresent()) {
        return ban;
      }
    }
    return vocabulary.holders(TermKind.COATING, piece).stream()
        .flatMap(slug -> ban(null, slug, process, thicknessMm).stream())
        .findFirst();
  }

  private static boolean denied(List<String> words, int from, int to) {
    return to < words.size() && words.get(to).equals(FREE)
        || from > 0 && DENIALS.contains(words.get(from - 1));
  }

  private static boolean concerns(
      CautionScope scope, Process process, Double thicknessMm, LaserSource source) {
    return among(scope.processes(), process == null ? null : process.code())
        && among(scope.sources(), source == null ? null : source.code())
        && (scope.thicknessAboveMm() == null
            || thicknessMm == null
            || thicknessMm > scope.thicknessAboveMm());
  }

  private static boolean among(List<String> codes, String code) {
    return codes.isEmpty() || code == null || codes.contains(code);
  }
}
