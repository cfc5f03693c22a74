package club.emberwell.api.contract;

import club.emberwell.access.ApiPaths;
import club.emberwell.entry.EntryKind;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.models.Operation;

/**
 * Operations that kinds of entries share: what a method of the class above theirs calls {@code
 * add{Kind}Photo} and says of {@code {a kind}} gets the kind that its address begins with.
 */
final class KindWords {
  private static final String NAME = "{Kind}";
  private static final String ARTICLE = "{a kind}";

  private KindWords() {}

  static void mend(String path, Operation operation) {
    if (operation.getOperationId().contains(NAME)) {
      EntryKind kind = of(path);
      String article = "aeiou".indexOf(kind.code().charAt(0)) < 0 ? "a " : "an ";
      operation.setOperationId(operation.getOperationId().replace(NAME, kind.label()));
      operation.setSummary(operation.getSummary().replace(ARTICLE, article + kind.code()));
    }
  }

  private static EntryKind of(String path) {
    return Stream.of(EntryKind.values())
        .filter(kind -> path.startsWith(ApiPaths.BASE + "/" + kind.code() + "s/"))
        .findFirst()
        .orElseThrow();
  }
}
