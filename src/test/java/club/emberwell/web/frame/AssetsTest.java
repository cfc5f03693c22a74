package club.emberwell.web.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class AssetsTest {
  private static final Path SOURCES = Path.of("src/main/resources/META-INF/resources/assets");

  private final Assets assets = new Assets("1.2.3");

  private String sent(String address) {
    String[] parts = address.substring("/assets/".length()).split("\\.");
    return assets.find(parts[0] + "." + parts[2], parts[1]).orElseThrow();
  }

  @Test
  void everyPageNeedsOneStylesheetAndOneScript() {
    assertEquals(1, assets.styleSheets().size());
    assertEquals(1, assets.scripts().size());
    assertTrue(
        assets.styleSheets().get(0).matches("/assets/emberwell\\.[0-9a-f]{12}\\.css"),
        assets.styleSheets().toString());
  }

  @Test
  void everyStyleOfOursIsInTheStylesheetOrInThatOfItsOnePage() throws IOException {
    String sent = sent(assets.styleSheets().get(0)) + sent(assets.address("cards.css"));
    try (Stream<Path> files = Files.list(SOURCES)) {
      for (Path file : files.filter(each -> each.toString().endsWith(".css")).toList()) {
        assertTrue(sent.contains(Files.readString(file)), file.toString());
      }
    }
  }

  @Test
  void theScriptBeginsWithTheLicenceOfWhatIsNotOurs() {
    String sent = sent(assets.scripts().get(0));
    assertTrue(sent.startsWith("/* htmx 2."), sent.substring(0, 80));
    assertTrue(sent.contains("Zero-Clause BSD"), sent.substring(0, 800));
    assertTrue(sent.contains("var htmx="));
    assertTrue(sent.contains(Assets.text(List.of("phone.js"))));
  }

  @Test
  void aNameOfOtherBytesIsNoName() {
    assertEquals(Optional.empty(), assets.find("emberwell.css", "0123456789ab"));
    assertEquals(Optional.empty(), assets.find("base.css", "0123456789ab"));
  }

  @Test
  void eachVersionMakesPhonesFetchThePagesTheyKeepAnew() {
    assertTrue(assets.stamp().startsWith("1.2.3-"), assets.stamp());
    assertNotEquals(assets.stamp(), new Assets("1.2.4").stamp());
  }
}
