package club.emberwell.web.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What our scripts never do. */
class ScriptRulesTest {
  private static final Path SCRIPTS = Path.of("src/main/resources/META-INF/resources/assets");

  /**
   * Whereby the name of a field could become a property of every object (OWASP ASVS 5.0, V15.3.6;
   * OWASP Prototype Pollution Prevention Cheat Sheet): what has such names is a Map, FormData or a
   * list.
   */
  private static final Pattern LED_ASTRAY =
      Pattern.compile(
          "\\w\\[[^\\]\"'0-9][^\\]]*\\]\\s*=[^=]"
              + "|\\bfor \\((?:const|let|var) \\w+ in "
              + "|Object\\.(?:assign|setPrototypeOf|defineProperty)|__proto__|\\.prototype\\b"
              + "|[{,]\\s*\\[[^\\]]+\\]\\s*:");

  @Test
  void noNameFromOutsideBecomesAProperty() throws IOException {
    try (Stream<Path> files = Files.list(SCRIPTS)) {
      List<Path> scripts = files.filter(file -> file.toString().endsWith(".js")).toList();
      assertTrue(scripts.size() > 5, "" + scripts);
      for (Path script : scripts) {
        List<String> found =
            Files.readString(script)
                .lines()
                .filter(line -> LED_ASTRAY.matcher(line).find())
                .toList();
        assertEquals(List.of(), found, script.toString());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "all[name] = value;",
        "form.fields[input.name] = input.value;",
        "for (const name in sent) {",
        "Object.assign(kept, JSON.parse(text));",
        "return { [name]: value };"
      })
  void theRuleSeesWhatItIsFor(String line) {
    assertTrue(LED_ASTRAY.matcher(line).find());
    assertFalse(LED_ASTRAY.matcher("const first = list[0]; kept.set(name, value);").find());
  }
}
