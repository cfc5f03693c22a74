package club.emberwell.search.match;

import java.util.List;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;

/** Words that were already folded, handed to the index; can be read again for the next trial. */
public final class FoldedTokens extends TokenStream {
  private final List<String> words;
  private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
  private int next;

  public FoldedTokens(List<String> words) {
    this.words = words;
  }

  @Override
  public boolean incrementToken() {
    if (next >= words.size()) {
      return false;
    }
    clearAttributes();
    term.append(words.get(next++));
    return true;
  }

  @Override
  public void reset() {
    next = 0;
  }
}
