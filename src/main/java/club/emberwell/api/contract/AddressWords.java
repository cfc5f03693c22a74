package club.emberwell.api.contract;

import java.util.Map;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;

/** What stands in an address, where its method does not say: the same name means the same. */
final class AddressWords {
  private static final Map<String, String> MEANING =
      Map.ofEntries(
          Map.entry("action", "Only what was done so, by its code."),
          Map.entry("alt", "What can be seen in the picture, for those who do not see it."),
          Map.entry("answer", "An answer of it: the page of answers that holds it."),
          Map.entry("by", "Only what this member did: the user name."),
          Map.entry("caption", "What everybody reads below the picture."),
          Map.entry("code", "Its code."),
          Map.entry("dimension", "The kind of quantity the text is read as."),
          Map.entry("folder", "The folder they lie in."),
          Map.entry("format", "`csv` or `jsonl`."),
          Map.entry("from", "From this time on, ISO 8601."),
          Map.entry("id", "Its id."),
          Map.entry("into", "The term that stays."),
          Map.entry("kind", "The kind of thing."),
          Map.entry("link", "The link: what stands last in its address, or its id."),
          Map.entry("member", "The member's id."),
          Map.entry("photo", "The id of the photo."),
          Map.entry(
              "preview", "`true`: says what would be done, and does nothing; `false`: does it."),
          Map.entry("q", "Words that all have to be there."),
          Map.entry("revision", "Which revision, from 1; the newest where it is left out."),
          Map.entry("size", "Which size of the picture; the whole one where it is left out."),
          Map.entry("sort", "What stands first."),
          Map.entry("tests", "How many tests to burn."),
          Map.entry("text", "What a person would type."),
          Map.entry("to", "Before this time, ISO 8601."),
          Map.entry("unanswered", "`true`: only those without an answer."),
          Map.entry(
              "value", "The word as it stands in searches and answers, e.g. `birch-plywood`."),
          Map.entry("with", "A search, as it stands behind the question mark of its address."),
          Map.entry("word", "The waiting word that the new term is made for: its id."));

  private AddressWords() {}

  static void mend(Operation operation) {
    if (operation.getParameters() == null) {
      return;
    }
    for (Parameter parameter : operation.getParameters()) {
      if (parameter.getDescription() == null) {
        parameter.setDescription(MEANING.get(parameter.getName()));
      }
    }
  }
}
