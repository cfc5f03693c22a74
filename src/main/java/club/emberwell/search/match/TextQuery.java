package club.emberwell.search.match;

import club.emberwell.catalog.Folding;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.search.query.Facet;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.MatchNoDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;

/**
 * What was typed in the box as a query made of objects: every word must be found, each in any
 * field. A word is found as itself, joined with its neighbour, or as part of a phrase the
 * vocabulary knows. Only a word the index does not hold may stand for others: as the beginning of
 * one where it is the last, else with one typo; so that a right word never brings in its
 * neighbours. A word that names a material or a coating is looked for in what was worked on, not in
 * remarks: a machine called "Slate tube" makes no slate. So is a thickness, by its class, where
 * anything of that class is there; else its words are words like others.
 */
public final class TextQuery {
  private static final float PHRASE_WEIGHT = 5;
  private static final float GUESS_WEIGHT = 0.3f;

  private final Vocabulary vocabulary;
  private final IndexReader reader;
  private final List<String> words;
  private final boolean[] subject;
  private final Map<String, Set<String>> guesses = new LinkedHashMap<>();
  private final List<String> missing = new ArrayList<>();
  private final List<Query> sizes = new ArrayList<>();

  private TextQuery(Vocabulary vocabulary, IndexReader reader, String text) throws IOException {
    this.vocabulary = vocabulary;
    this.reader = reader;
    Words reading = new Words(vocabulary.folding());
    this.words = reading.wanted(withoutThickness(reading, text));
    this.subject = new boolean[words.size()];
  }

  /**
   * A query and what was read into it.
   *
   * @param guesses words the index does not hold, with those taken instead
   * @param missing words nothing was found for
   */
  public record Result(Query query, Map<String, Set<String>> guesses, List<String> missing) {}

  public static Result of(Vocabulary vocabulary, IndexReader reader, String text)
      throws IOException {
    TextQuery made = new TextQuery(vocabulary, reader, text);
    return new Result(made.build(), made.guesses, made.missing);
  }

  private Query build() throws IOException {
    if (words.isEmpty() && sizes.isEmpty()) {
      return new MatchAllDocsQuery();
    }
    List<Set<Query>> ways = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      ways.add(new LinkedHashSet<>());
    }
    addJoined(ways);
    addPhrases(ways);
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    sizes.forEach(size -> all.add(size, Occur.MUST));
    for (int i = 0; i < words.size(); i++) {
      addWord(i, ways.get(i));
      Query any =
          ways.get(i).isEmpty()
              ? new MatchNoDocsQuery("no such word")
              : new DisjunctionMaxQuery(ways.get(i), 0);
      all.add(any, Occur.MUST);
    }
    return all.build();
  }

  /** Takes the thicknesses out of which the index has something. */
  private String withoutThickness(Words reading, String text) throws IOException {
    Set<String> found = new TreeSet<>();
    Folding.withoutThickness(text, found::add);
    Set<String> taken = new TreeSet<>();
    for (String thickness : found) {
      Optional<Term> known = classOf(thickness);
      if (known.isPresent() && reader.docFreq(known.get()) > 0) {
        taken.add(thickness);
        sizes.add(size(known.get(), reading.wanted(thickness)));
      }
    }
    return Folding.withoutThickness(text, taken::contains);
  }

  private static Optional<Term> classOf(String thickness) {
    return QuantityReader.read(QuantityKind.THICKNESS, thickness)
        .value()
        .map(Quantity::doubleValue)
        .filter(ThicknessClass::isUsual)
        .flatMap(ThicknessClass::of)
        .map(one -> new Term(Facet.THICKNESS.field(), one.code()));
  }

  /** Stated of the piece, or typed with it. */
  private static Query size(Term known, List<String> words) {
    Query stated = new BoostQuery(new ConstantScoreQuery(new TermQuery(known)), PHRASE_WEIGHT);
    BooleanQuery.Builder typed = new BooleanQuery.Builder();
    words.forEach(word -> typed.add(in(TextField.SUBJECT, word), Occur.MUST));
    return new DisjunctionMaxQuery(List.of(stated, typed.build()), 0);
  }

  private void addJoined(List<Set<Query>> ways) throws IOException {
    for (int i = 0; i + 1 < words.size(); i++) {
      String joined = words.get(i) + words.get(i + 1);
      if (Dictionary.holds(reader, joined)) {
        Query query = inAnyField(joined);
        ways.get(i).add(query);
        ways.get(i + 1).add(query);
      }
    }
  }

  private void addPhrases(List<Set<Query>> ways) {
    for (int from = 0; from < words.size(); from++) {
      for (int to = from + 1; to <= Math.min(words.size(), from + Words.PHRASE); to++) {
        String phrase = String.join(" ", words.subList(from, to));
        for (Facet facet : Facet.values()) {
          int start = from;
          int end = to;
          facet
              .vocabulary()
              .flatMap(kind -> meaning(facet, kind, phrase))
              .ifPresent(
                  query -> {
                    ways.subList(start, end).forEach(way -> way.add(query));
                    if (!facet.vocabulary().equals(Optional.of(TermKind.COLOUR))) {
                      Arrays.fill(subject, start, end, true);
                    }
                  });
        }
      }
    }
  }

  private Optional<Query> meaning(Facet facet, TermKind kind, String phrase) {
    List<BytesRef> slugs =
        vocabulary.holders(kind, phrase).stream()
            .flatMap(slug -> vocabulary.descendants(kind, slug).stream())
            .distinct()
            .map(BytesRef::new)
            .toList();
    if (slugs.isEmpty()) {
      return Optional.empty();
    }
    Query query = new ConstantScoreQuery(new TermInSetQuery(facet.field(), slugs));
    return Optional.of(new BoostQuery(query, PHRASE_WEIGHT));
  }

  private void addWord(int at, Set<Query> ways) throws IOException {
    String word = words.get(at);
    if (subject[at]) {
      ways.add(in(TextField.SUBJECT, word));
      return;
    }
    if (Dictionary.holds(reader, word)) {
      ways.add(inAnyField(word));
      return;
    }
    if (!ways.isEmpty()) {
      return;
    }
    Set<String> instead = new TreeSet<>();
    if (at == words.size() - 1) {
      instead.addAll(Dictionary.beginningWith(reader, word));
    }
    if (instead.isEmpty()) {
      instead.addAll(Dictionary.oneTypoFrom(reader, word));
    }
    if (!instead.isEmpty()) {
      guesses.put(word, instead);
      ways.add(guessed(instead));
    } else {
      missing.add(word);
    }
  }

  private static Query inAnyField(String word) {
    return in(TextField.all(), word);
  }

  private static Query in(Collection<TextField> where, String word) {
    List<Query> fields = new ArrayList<>();
    for (TextField field : where) {
      TermQuery term = new TermQuery(new Term(field.field(), word));
      fields.add(new BoostQuery(term, field.weight()));
    }
    return new DisjunctionMaxQuery(fields, 0);
  }

  // One clause a field however many words, so that no text can reach the clause limit.
  private static Query guessed(Set<String> instead) {
    List<BytesRef> terms = instead.stream().map(BytesRef::new).toList();
    List<Query> fields = new ArrayList<>();
    for (TextField field : TextField.all()) {
      Query any = new ConstantScoreQuery(new TermInSetQuery(field.field(), terms));
      fields.add(new BoostQuery(any, field.weight() * GUESS_WEIGHT));
    }
    return new DisjunctionMaxQuery(fields, 0);
  }
}
