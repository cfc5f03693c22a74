package club.emberwell.catalog;

import club.emberwell.catalog.Match.Outcome;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * An immutable snapshot of all terms: lookup by slug and by any spelling, and the tree. A lookup
 * costs one hash access; only a failed one looks at every spelling to find near ones.
 */
public final class Vocabulary {
  private final Map<TermKind, Map<String, Term>> bySlug = new EnumMap<>(TermKind.class);
  private final Map<TermKind, Map<String, Set<String>>> bySpelling = new EnumMap<>(TermKind.class);
  private final Map<TermKind, Map<String, List<Term>>> children = new EnumMap<>(TermKind.class);
  private final Folding folding;
  private final String contentHash;

  public Vocabulary(Collection<Term> terms, Folding folding) {
    this.folding = folding;
    for (TermKind kind : TermKind.values()) {
      bySlug.put(kind, new LinkedHashMap<>());
      bySpelling.put(kind, new LinkedHashMap<>());
      children.put(kind, new LinkedHashMap<>());
    }
    terms.forEach(term -> bySlug.get(term.kind()).put(term.slug(), term));
    terms.forEach(this::spell);
    terms.stream().filter(Vocabulary::isLive).forEach(this::hang);
    children.values().forEach(m -> m.values().forEach(l -> l.sort(BY_LABEL)));
    contentHash = ContentHash.of(terms);
  }

  private static final Comparator<Term> BY_LABEL =
      Comparator.comparing(Term::label, String.CASE_INSENSITIVE_ORDER).thenComparing(Term::slug);

  private static boolean isLive(Term term) {
    return term.replacedBy() == null;
  }

  private void spell(Term term) {
    String target = successor(term).slug();
    Map<String, Set<String>> spellings = bySpelling.get(term.kind());
    Set<String> texts = new LinkedHashSet<>(term.synonyms());
    texts.add(term.label());
    texts.add(term.slug());
    for (String text : texts) {
      spellings.computeIfAbsent(folding.fold(text), key -> new TreeSet<>()).add(target);
    }
  }

  private void hang(Term term) {
    String parent = parent(term).map(Term::slug).orElse("");
    children.get(term.kind()).computeIfAbsent(parent, key -> new ArrayList<>()).add(term);
  }

  /** What a written text means; slugs and labels are spellings too. Never null, never throws. */
  public Match resolve(TermKind kind, String text) {
    String cut = text.length() > CatalogLimits.TEXT ? text.substring(0, CatalogLimits.TEXT) : text;
    String bare = Folding.withoutThickness(cut);
    return lookUp(kind, text, cut)
        .or(() -> lookUp(kind, text, bare).map(Match::inPart))
        .or(() -> lookUp(kind, text, folding.withoutFillers(bare)).map(Match::inPart))
        .or(() -> kind == TermKind.MATERIAL ? madeOf(text, bare) : Optional.empty())
        .orElseGet(() -> Match.open(text, Outcome.NONE, nearest(kind, cut)));
  }

  /** What a text means that names a thing: the material beside it, or the one that is coated. */
  private Optional<Match> madeOf(String written, String text) {
    List<String> words = folding.words(folding.withoutFillers(text));
    Optional<Thing> thing = words.stream().flatMap(w -> folding.thing(w).stream()).findFirst();
    if (thing.isEmpty()) {
      return Optional.empty();
    }
    String beside =
        words.stream()
            .filter(word -> folding.thing(word).isEmpty())
            .collect(Collectors.joining(" "));
    Optional<Match> named = lookUp(TermKind.MATERIAL, written, beside).map(Match::inPart);
    if (named.isPresent()) {
      return named;
    }
    if (!holders(TermKind.COATING, beside).isEmpty()) {
      return successor(TermKind.MATERIAL, thing.get().coated())
          .map(coated -> Match.exact(written, coated).inPart());
    }
    return Optional.of(
        Match.open(
            written,
            Outcome.AMBIGUOUS,
            thing.get().of().stream()
                .flatMap(slug -> successor(TermKind.MATERIAL, slug).stream())
                .toList()));
  }

  private Optional<Match> lookUp(TermKind kind, String written, String text) {
    Set<String> slugs = bySpelling.get(kind).getOrDefault(folding.fold(text), Set.of());
    if (slugs.isEmpty()) {
      return Optional.empty();
    }
    if (slugs.size() > 1) {
      return Optional.of(Match.open(written, Outcome.AMBIGUOUS, terms(kind, slugs)));
    }
    return Optional.of(Match.exact(written, bySlug.get(kind).get(slugs.iterator().next())));
  }

  /**
   * The same as a reading: a term, or none with the remark {@code term-ambiguous} or {@code
   * term-unknown} (warnings: the text is kept as written and waits for a moderator), whose readings
   * are labels that resolve when typed.
   */
  public Reading<Term> read(TermKind kind, String text) {
    Match match = resolve(kind, text);
    List<String> labels = match.candidates().stream().map(Term::label).toList();
    return switch (match.outcome()) {
      case EXACT -> Reading.of(text, match.term().orElseThrow());
      case AMBIGUOUS ->
          unresolved(text, RemarkId.TERM_AMBIGUOUS, "This text can mean several things.", labels);
      case NONE ->
          unresolved(
              text,
              RemarkId.TERM_UNKNOWN,
              "We do not know this word yet. It stays as you wrote it until a moderator sorts it in.",
              labels);
    };
  }

  private static Reading<Term> unresolved(
      String text, RemarkId id, String detail, List<String> labels) {
    return new Reading<>(
        text, Optional.empty(), List.of(new Remark(id, Severity.WARNING, "", detail, labels)));
  }

  private List<Term> nearest(TermKind kind, String text) {
    Nearness nearness = new Nearness(folding.words(text));
    Map<String, Double> best = new LinkedHashMap<>();
    bySpelling
        .get(kind)
        .forEach(
            (spelling, slugs) -> {
              double distance = nearness.to(spelling);
              if (distance <= CatalogLimits.SUGGESTION_DISTANCE) {
                slugs.forEach(slug -> best.merge(slug, distance, Math::min));
              }
            });
    return best.entrySet().stream()
        .sorted(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry::getKey))
        .limit(CatalogLimits.SUGGESTIONS)
        .map(entry -> bySlug.get(kind).get(entry.getKey()))
        .toList();
  }

  private List<Term> terms(TermKind kind, Collection<String> slugs) {
    return slugs.stream().map(bySlug.get(kind)::get).toList();
  }

  /** The term of exactly this slug, merged or not. */
  public Optional<Term> term(TermKind kind, String slug) {
    return Optional.ofNullable(slug == null ? null : bySlug.get(kind).get(slug));
  }

  /** The living term behind a slug: redirects of merges are followed for ever. */
  public Optional<Term> successor(TermKind kind, String slug) {
    return term(kind, slug).map(this::successor);
  }

  private Term successor(Term term) {
    Set<String> seen = new HashSet<>();
    Term at = term;
    while (at.replacedBy() != null && seen.add(at.slug())) {
      Term next = bySlug.get(term.kind()).get(at.replacedBy());
      if (next == null) {
        return at;
      }
      at = next;
    }
    return at;
  }

  private Optional<Term> parent(Term term) {
    return successor(term.kind(), term.parent());
  }

  /** From the top of the tree down to the term itself (its successor where merged). */
  public List<Term> path(TermKind kind, String slug) {
    Deque<Term> path = new ArrayDeque<>();
    Optional<Term> at = successor(kind, slug);
    while (at.isPresent() && !path.contains(at.get())) {
      path.addFirst(at.get());
      at = parent(at.get());
    }
    return List.copyOf(path);
  }

  /**
   * The slug that stands for a term where trials are put together: that of the widest term above it
   * whose kinds respond alike, else its own; an unknown slug stands for itself.
   */
  public String respondsAs(TermKind kind, String slug) {
    List<Term> path = path(kind, slug);
    return path.stream()
        .filter(Term::respondsAlike)
        .findFirst()
        .or(() -> path.stream().reduce((above, below) -> below))
        .map(Term::slug)
        .orElse(slug);
  }

  /** The slug of the living term and of everything below it; empty for an unknown slug. */
  public Set<String> descendants(TermKind kind, String slug) {
    Set<String> found = new LinkedHashSet<>();
    successor(kind, slug).ifPresent(term -> collect(term, found));
    return found;
  }

  private void collect(Term term, Set<String> found) {
    if (found.add(term.slug())) {
      children(term.kind(), term.slug()).forEach(child -> collect(child, found));
    }
  }

  /** Living terms directly below a slug, by label; null asks for the top. */
  public List<Term> children(TermKind kind, String slug) {
    return List.copyOf(children.get(kind).getOrDefault(slug == null ? "" : slug, List.of()));
  }

  /** Every living term, parents before children, siblings by label. */
  public List<Term> terms(TermKind kind) {
    Set<String> found = new LinkedHashSet<>();
    children(kind, null).forEach(top -> collect(top, found));
    return terms(kind, found);
  }

  /** Terms that were merged into another and now redirect to it. */
  public List<Term> redirects(TermKind kind) {
    return bySlug.get(kind).values().stream().filter(term -> !isLive(term)).toList();
  }

  /** Living terms that have this text among their spellings, folded alike. */
  public Set<String> holders(TermKind kind, String text) {
    return Set.copyOf(bySpelling.get(kind).getOrDefault(folding.fold(text), Set.of()));
  }

  /** The same for a text that is folded already. */
  List<Term> spelled(TermKind kind, String folded) {
    return terms(kind, bySpelling.get(kind).getOrDefault(folded, Set.of()));
  }

  public Folding folding() {
    return folding;
  }

  /** SHA-256 over all terms and spellings without their version numbers: equal content, equal. */
  public String contentHash() {
    return contentHash;
  }
}
