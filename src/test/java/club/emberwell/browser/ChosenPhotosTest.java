package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photos on a phone: chosen, seen, kept over a refusal, and on the report with their words. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class ChosenPhotosTest extends BrowserTest {
  private static final String CAPTION = "Corner at an angle";
  private static final String SEEN = "[data-photo-slot] [data-photo-seen] canvas";

  @TempDir Path folder;

  private Path picture(String name, Color colour) throws IOException {
    BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    Graphics2D drawing = image.createGraphics();
    drawing.setColor(colour);
    drawing.fillRect(0, 0, 640, 480);
    drawing.dispose();
    Path file = Files.createDirectories(folder).resolve(name);
    ImageIO.write(image, "jpg", file.toFile());
    return file;
  }

  @Test
  void oneOfTwoPhotosStaysOverARefusalAndStandsOnTheReportWithItsCaption() throws IOException {
    try (Visit visit = as(MEMBER, Screen.PHONE).open("/post?fresh=yes")) {
      Locator files = visit.one("input[data-parks][multiple]");
      files
          .first()
          .setInputFiles(
              new Path[] {picture("front.jpg", Color.RED), picture("back.jpg", Color.BLUE)});
      assertThat(visit.one(SEEN)).hasCount(2);
      visit.unfold();
      visit.one("[data-photo-slot] input[name$='caption']").first().fill(CAPTION);
      visit.fill(
          Map.of(
              "material", "slate",
              "settings.power", "9 W",
              "settings.speed", "12 kg",
              "settings.lineSpacing", "0.1 mm"));
      visit.one("main input[name=machine]").first().check();
      visit.choose("process", "surface-engraving").choose("effect", "right").send();
      assertThat(visit.one("#error-summary")).isVisible();
      assertThat(visit.one(".photo-parked img")).hasCount(2);
      assertThat(visit.one(".photo-parked input[name$='caption']").first()).hasValue(CAPTION);
      visit.one(".photo-parked li").nth(1).locator("input[type=checkbox]").check();
      visit.fill(Map.of("settings.speed", "50 mm/s")).send();
      assertThat(visit.page()).hasURL(Pattern.compile(".*/reports/[0-9a-f-]{36}\\?saved"));
      assertThat(visit.one("main ul.photos img")).hasCount(1);
      assertThat(visit.one("main ul.photos")).containsText(CAPTION);
      visit.noComplaints();
    }
  }
}
