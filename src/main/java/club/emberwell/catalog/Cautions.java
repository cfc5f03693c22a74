package club.emberwell.catalog;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which cautions go with a work. Immutable; hazards inherit down the trees of the vocabulary. */
public final class Cautions {
  private static final Comparator<Caution> HEAVIEST_FIRST =
      Comparator.comparing((Caution c) -> c.rule().weight()).thenComparing(Caution::isGeneral);

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
      if ((scope.goesWithAll() || because.isPresent())
          && concerns(scope, process, thicknessMm, source)) {
        found.add(new Caution(each.rule(), because));
      }
    }
    found.sort(HEAVIEST_FIRST);
    return List.copyOf(found);
  }

  /** What is known of one term alone, whatever is done to it: for vocabulary pages. */
  public List<Caution> forTerm(TermKind kind, String slug) {
    return forTerm(kind, slug, null, null);
  }

  private List<Caution> forTerm(TermKind kind, String slug, Process process, LaserSource source) {
    String material = kind == TermKind.MATERIAL ? slug : null;
    String coating = kind == TermKind.COATING ? slug : null;
    return forWork(material, coating, process, null, source).stream()
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
   * The cautions of words for something that the vocabulary does not hold: until somebody knows
   * what it is, they stand.
   */
  public List<Caution> unlisted(String words) {
    return rules.stream()
        .filter(rule -> rule.scope().meansUnlisted())
        .map(rule -> new Caution(rule, Optional.empty(), words))
        .toList();
  }

  /**
   * The cautions of words that were filed as nothing: of what they name, else of what nobody knows.
   *
   * @param process null = any
   * @param source null = any
   */
  public List<Caution> ofWords(String words, Process process, LaserSource source) {
    List<Term> named = named(words);
    return named.isEmpty()
        ? unlisted(words)
        : forTerms(named, Stream.ofNullable(process).toList(), Stream.ofNullable(source).toList());
  }

  /**
   * The cautions of a work as somebody writes it: by its code or any of its names.
   *
   * @param material blank or null = none
   * @param coating likewise
   */
  public List<Caution> asWritten(String material, String coating, Process process) {
    return once(
        Stream.concat(
            written(TermKind.MATERIAL, material, process),
            written(TermKind.COATING, coating, process)));
  }

  private Stream<Caution> written(TermKind kind, String words, Process process) {
    if (words == null || words.isBlank()) {
      return Stream.empty();
    }
    return vocabulary
        .successor(kind, words)
        .or(() -> vocabulary.resolve(kind, words).term())
        .map(term -> forTerm(kind, term.slug(), process, null))
        .orElseGet(() -> ofWords(words, process, null))
        .stream();
  }

  /** The materials and coatings a text names, each once; see {@link NamedTerms}. */
  public List<Term> named(String text) {
    return NamedTerms.in(text, vocabulary);
  }

  /**
   * The specific cautions of materials and coatings, each once, bans first: for what somebody looks
   * for or names in words of their own. General ones are left out.
   *
   * @param processes those in question; empty = any
   * @param sources likewise
   */
  public List<Caution> forTerms(
      Collection<Term> terms, Collection<Process> processes, Collection<LaserSource> sources) {
    List<Caution> found = new ArrayList<>();
    for (Term term : terms) {
      for (Process process : anyOf(processes)) {
        for (LaserSource source : anyOf(sources)) {
          found.addAll(forTerm(term.kind(), term.slug(), process, source));
        }
      }
    }
    return once(found.stream());
  }

  /** Each rule once, through what came first with it; bans first, general ones last. */
  public static List<Caution> once(Stream<Caution> cautions) {
    Map<String, Caution> found = new LinkedHashMap<>();
    cautions.forEach(caution -> found.putIfAbsent(caution.rule().id(), caution));
    return found.values().stream().sorted(HEAVIEST_FIRST).toList();
  }

  private static <T> List<T> anyOf(Collection<T> asked) {
    return asked.isEmpty() ? Collections.singletonList(null) : List.copyOf(asked);
  }

  /**
   * Present where a text that resolved to no term still names something prohibited ("red vinyl
   * sticker").
   */
  public Optional<Ban> banInText(String text, Process process, Double thicknessMm) {
    return named(text).stream()
        .flatMap(
            term ->
                term.kind() == TermKind.MATERIAL
                    ? ban(term.slug(), null, process, thicknessMm).stream()
                    : ban(null, term.slug(), process, thicknessMm).stream())
        .findFirst();
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
