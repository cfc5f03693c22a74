package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Takes a name and an address out of everybody's texts, when all that was the member's own is gone.
 *
 * <p>A name that is also an ordinary word here (steel, power, birch) is replaced only where it is
 * clearly meant as a name, behind an @: to take the word out of everybody's sentences would spoil
 * what they say.
 */
@ApplicationScoped
class NameSweep {
  private static final String WORDS = "/club/emberwell/exchange/ordinary-words.txt";

  /** Neither side of a name goes on with what a name may hold. */
  private static final String NOT_BEFORE = "(?<![A-Za-z0-9_-])";

  private static final String NOT_AFTER = "(?![A-Za-z0-9_-])";
  private static final Pattern SPECIAL = Pattern.compile("[^\\p{L}\\p{N}]");

  private final NameSweepRepository rows;
  private final Set<String> ordinary = load();

  NameSweep(NameSweepRepository rows) {
    this.rows = rows;
  }

  /**
   * @param email null where there is none
   */
  void sweep(String handle, String email) {
    String name = handle.toLowerCase(Locale.ROOT);
    boolean word = ordinary.contains(name) || rows.isVocabulary(name);
    String start = word ? "@" : "@?" + NOT_BEFORE;
    rows.replace(start + name + NOT_AFTER, handle, "former member");
    if (email != null) {
      rows.replace(escaped(email), email, "(an address)");
    }
  }

  /** Literally, for the regular expressions of the database. */
  static String escaped(String text) {
    return SPECIAL.matcher(text).replaceAll("\\\\$0");
  }

  private static Set<String> load() {
    try (InputStream in = NameSweep.class.getResourceAsStream(WORDS);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .flatMap(line -> Pattern.compile(" ").splitAsStream(line))
          .collect(Collectors.toUnmodifiableSet());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
