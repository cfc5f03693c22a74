package club.emberwell.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/**
 * The document of the API keeps the rules that readers and makers of clients expect, Redocly's
 * strict ones and a few more; {@code FrozenTest} holds it to what the server answers. Needs Node.js
 * and the rules, which {@code deploy/test.sh} installs.
 */
class LintTest {
  @Test
  void theDocumentKeepsTheRules() throws IOException, InterruptedException {
    Process lint =
        new ProcessBuilder(
                "node",
                "lint.mjs",
                new File("src/test/resources/frozen/openapi.json").getAbsolutePath())
            .directory(new File(".config/openapi-lint"))
            .redirectErrorStream(true)
            .start();
    String found = new String(lint.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, lint.waitFor(), found);
  }
}
