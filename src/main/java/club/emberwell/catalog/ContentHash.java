package club.emberwell.catalog;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;

/** SHA-256 of what terms say, independent of their order and of their version numbers. */
public final class ContentHash {
  private ContentHash() {}

  static String of(Collection<Term> terms) {
    return sha256(
        terms.stream()
            .sorted(Comparator.comparing(Term::kind).thenComparing(Term::slug))
            .map(ContentHash::line)
            .collect(Collectors.joining("\n")));
  }

  private static String line(Term term) {
    List<String> synonyms = term.synonyms().stream().sorted().toList();
    return List.of(
            term.kind().code(),
            term.slug(),
            term.label(),
            String.valueOf(term.parent()),
            synonyms,
            String.valueOf(term.note()),
            String.valueOf(term.hex()),
            List.of(term.deprecated(), term.respondsAlike()),
            String.valueOf(term.replacedBy()),
            term.origin())
        .toString();
  }

  public static String sha256(String text) {
    return DigestUtils.sha256Hex(text);
  }
}
