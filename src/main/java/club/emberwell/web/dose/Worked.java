package club.emberwell.web.dose;

import java.util.List;

/**
 * A computed value with what it rests on.
 *
 * @param assumptions and caveats, each a sentence
 */
public record Worked(
    String title, String value, String formula, String source, List<String> assumptions) {
  public Worked {
    assumptions = List.copyOf(assumptions);
  }
}
