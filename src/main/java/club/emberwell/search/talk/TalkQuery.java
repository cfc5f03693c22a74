package club.emberwell.search.talk;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.match.Words;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.FuzzyQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.MatchNoDocsQuery;
import org.apache.lucene.search.PrefixQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;

/**
 * Searches among questions and notices, made of objects. Words are folded as everywhere else, so
 * that a material is found by any of its spellings.
 */
final class TalkQuery {
  private static final float TITLE_WEIGHT = 3;
  private static final float TIES_WEIGHT = 2;
  private static final float MEANING_WEIGHT = 4;
  private static final float GUESS_WEIGHT = 0.3f;

  /** Of the words typed so far, this share must be found for another question to be similar. */
  private static final double SIMILAR_SHARE = 0.4;

  private static final List<String> TEXTS =
      List.of(TalkDocuments.TITLE, TalkDocuments.BODY, TalkDocuments.TIES);
  private static final List<TermKind> KINDS = List.of(TermKind.MATERIAL, TermKind.COATING);

  private final Vocabulary vocabulary;
  private final IndexReader reader;

  TalkQuery(Vocabulary vocabulary, IndexReader reader) {
    this.vocabulary = vocabulary;
    this.reader = reader;
  }

  /** Entries that hold every word; everything where there is none. */
  Query all(String text) throws IOException {
    List<Query> words = words(text);
    if (words.isEmpty()) {
      return new MatchAllDocsQuery();
    }
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    words.forEach(word -> all.add(word, Occur.MUST));
    return all.build();
  }

  /** Entries that hold many of the words, those with the rarest first. */
  Query similar(String text) throws IOException {
    List<Query> words = words(text);
    if (words.isEmpty()) {
      return new MatchNoDocsQuery("nothing typed yet");
    }
    BooleanQuery.Builder some = new BooleanQuery.Builder();
    some.setMinimumNumberShouldMatch((int) Math.ceil(words.size() * SIMILAR_SHARE));
    words.forEach(word -> some.add(word, Occur.SHOULD));
    return some.build();
  }

  /**
   * Entries that concern a search: none of their ties contradicts it, and its subject (words,
   * material, coating; where it has none, source, process or controller) is found in them.
   *
   * @param everyWord true: where there are words, all of them must be found
   */
  Query about(SearchQuery query, boolean everyWord) throws IOException {
    BooleanQuery.Builder fit = new BooleanQuery.Builder();
    List<Query> subject = new ArrayList<>();
    List<Query> circumstances = new ArrayList<>();
    if (!query.text().isEmpty()) {
      Query text = all(query.text());
      subject.add(text);
      if (everyWord) {
        fit.add(text, Occur.FILTER);
      }
    }
    for (Facet facet : List.of(Facet.MATERIAL, Facet.COATING)) {
      tie(query, facet, fit, subject);
    }
    for (Facet facet : List.of(Facet.SOURCE, Facet.PROCESS)) {
      tie(query, facet, fit, circumstances);
    }
    controller(query, fit, circumstances);
    List<Query> wanted = subject.isEmpty() ? circumstances : subject;
    if (wanted.isEmpty()) {
      return new MatchNoDocsQuery("this search is about nothing that is talked of");
    }
    BooleanQuery.Builder any = new BooleanQuery.Builder().setMinimumNumberShouldMatch(1);
    wanted.forEach(one -> any.add(one, Occur.SHOULD));
    fit.add(any.build(), Occur.MUST);
    circumstances.forEach(one -> fit.add(one, Occur.SHOULD));
    return fit.build();
  }

  private void tie(SearchQuery query, Facet facet, BooleanQuery.Builder fit, List<Query> found)
      throws IOException {
    List<String> values = query.facets().getOrDefault(facet.code(), List.of());
    if (values.isEmpty()) {
      return;
    }
    Set<String> codes = new LinkedHashSet<>(QueryParts.expand(facet, values, vocabulary));
    facet
        .vocabulary()
        .ifPresent(
            kind ->
                values.forEach(
                    value ->
                        vocabulary.path(kind, value).stream().map(Term::slug).forEach(codes::add)));
    List<Query> ways = new ArrayList<>();
    ways.add(new BoostQuery(oneOf(facet, codes), MEANING_WEIGHT));
    Set<String> open = new LinkedHashSet<>(codes);
    open.add(TalkDocuments.NONE);
    fit.add(oneOf(facet, open), Occur.FILTER);
    for (String value : values) {
      ways.add(all(FacetValues.label(facet, value, vocabulary)));
    }
    found.add(new DisjunctionMaxQuery(ways, 0));
  }

  private void controller(SearchQuery query, BooleanQuery.Builder fit, List<Query> found)
      throws IOException {
    List<String> values = query.facets().getOrDefault(Facet.CONTROLLER_VERSION.code(), List.of());
    if (values.isEmpty()) {
      return;
    }
    BooleanQuery.Builder open = new BooleanQuery.Builder();
    open.add(term(TalkDocuments.CONTROLLER, TalkDocuments.NONE), Occur.SHOULD);
    for (String value : values) {
      BooleanQuery.Builder each = new BooleanQuery.Builder();
      for (String word : new Words(vocabulary.folding()).wanted(value)) {
        each.add(term(TalkDocuments.CONTROLLER, word), Occur.MUST);
      }
      open.add(each.build(), Occur.SHOULD);
      found.add(all(value));
    }
    fit.add(open.build(), Occur.FILTER);
  }

  /** One query a word, in order. */
  private List<Query> words(String text) throws IOException {
    List<String> words = new Words(vocabulary.folding()).wanted(text);
    List<Query> found = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      List<Query> ways = new ArrayList<>(meanings(words, i));
      ways.addAll(spelled(words, i));
      found.add(new DisjunctionMaxQuery(ways, 0));
    }
    return found;
  }

  /** What the word, alone or with a neighbour, means in the vocabulary. */
  private List<Query> meanings(List<String> words, int at) {
    List<Query> found = new ArrayList<>();
    for (int from = Math.max(0, at - 1); from <= at; from++) {
      for (int to = at + 1; to <= Math.min(words.size(), at + 2); to++) {
        String phrase = String.join(" ", words.subList(from, to));
        for (TermKind kind : KINDS) {
          Set<String> slugs = new LinkedHashSet<>();
          vocabulary
              .holders(kind, phrase)
              .forEach(slug -> slugs.addAll(vocabulary.descendants(kind, slug)));
          if (!slugs.isEmpty()) {
            Facet facet = kind == TermKind.MATERIAL ? Facet.MATERIAL : Facet.COATING;
            found.add(new BoostQuery(oneOf(facet, slugs), MEANING_WEIGHT));
          }
        }
      }
    }
    return found;
  }

  private List<Query> spelled(List<String> words, int at) throws IOException {
    String word = words.get(at);
    List<Query> found = new ArrayList<>(inTexts(word));
    if (at > 0) {
      found.addAll(inTexts(words.get(at - 1) + word));
    }
    if (at + 1 < words.size()) {
      found.addAll(inTexts(word + words.get(at + 1)));
    }
    if (holds(word) || word.length() > SearchLimits.WORD) {
      return found;
    }
    boolean begins = at == words.size() - 1 && word.length() >= SearchLimits.BEGINNING_LETTERS;
    boolean typo =
        word.length() >= SearchLimits.TYPO_LETTERS && word.chars().noneMatch(Character::isDigit);
    for (String field : TEXTS) {
      if (begins) {
        found.add(new BoostQuery(new PrefixQuery(of(field, word)), GUESS_WEIGHT));
      }
      if (typo) {
        FuzzyQuery near = new FuzzyQuery(of(field, word), 1, 1, SearchLimits.EXPANSIONS, true);
        found.add(new BoostQuery(near, GUESS_WEIGHT));
      }
    }
    return found;
  }

  private boolean holds(String word) throws IOException {
    for (String field : TEXTS) {
      if (reader.docFreq(of(field, word)) > 0) {
        return true;
      }
    }
    return false;
  }

  private static List<Query> inTexts(String word) {
    return List.of(
        new BoostQuery(term(TalkDocuments.TITLE, word), TITLE_WEIGHT),
        term(TalkDocuments.BODY, word),
        new BoostQuery(term(TalkDocuments.TIES, word), TIES_WEIGHT));
  }

  private static Query oneOf(Facet facet, Collection<String> codes) {
    return new ConstantScoreQuery(
        new TermInSetQuery(facet.field(), codes.stream().map(BytesRef::new).toList()));
  }

  private static Query term(String field, String word) {
    return new TermQuery(of(field, word));
  }

  private static org.apache.lucene.index.Term of(String field, String word) {
    return new org.apache.lucene.index.Term(field, word);
  }
}
