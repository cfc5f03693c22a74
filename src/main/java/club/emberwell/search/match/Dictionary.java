package club.emberwell.search.match;

import club.emberwell.search.query.SearchLimits;
import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.MultiTerms;
import org.apache.lucene.index.Term;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.FuzzyTermsEnum;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.StringHelper;

/** Which words the text fields of an index hold. */
final class Dictionary {
  private Dictionary() {}

  static boolean holds(IndexReader reader, String word) throws IOException {
    for (TextField field : TextField.all()) {
      if (reader.docFreq(new Term(field.field(), word)) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Words that begin so, at most {@link SearchLimits#EXPANSIONS} a field. */
  static Set<String> beginningWith(IndexReader reader, String word) throws IOException {
    Set<String> found = new TreeSet<>();
    if (word.length() < SearchLimits.BEGINNING_LETTERS) {
      return found;
    }
    BytesRef prefix = new BytesRef(word);
    for (TextField field : TextField.all()) {
      Terms terms = MultiTerms.getTerms(reader, field.field());
      if (terms == null) {
        continue;
      }
      TermsEnum each = terms.iterator();
      if (each.seekCeil(prefix) == TermsEnum.SeekStatus.END) {
        continue;
      }
      int left = SearchLimits.EXPANSIONS;
      BytesRef term = each.term();
      while (term != null && left-- > 0 && StringHelper.startsWith(term, prefix)) {
        found.add(term.utf8ToString());
        term = each.next();
      }
    }
    return found;
  }

  /**
   * Words one letter away (changed, added, left out or swapped). Numbers are meant as they are: 304
   * is not a typo of 316.
   */
  static Set<String> oneTypoFrom(IndexReader reader, String word) throws IOException {
    Set<String> found = new TreeSet<>();
    if (word.codePointCount(0, word.length()) < SearchLimits.TYPO_LETTERS
        || word.length() > SearchLimits.WORD
        || word.chars().anyMatch(Character::isDigit)) {
      return found;
    }
    for (TextField field : TextField.all()) {
      Terms terms = MultiTerms.getTerms(reader, field.field());
      if (terms == null) {
        continue;
      }
      FuzzyTermsEnum near = new FuzzyTermsEnum(terms, new Term(field.field(), word), 1, 0, true);
      int left = SearchLimits.EXPANSIONS;
      for (BytesRef term = near.next(); term != null && left-- > 0; term = near.next()) {
        found.add(term.utf8ToString());
      }
    }
    return found;
  }
}
