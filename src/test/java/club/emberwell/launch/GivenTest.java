package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@ExtendWith(OnACommandLine.class)
class GivenTest {
  @TempDir Path folder;

  @Test
  void aVariableWinsOverTheFileInTheHome() throws IOException {
    Files.writeString(
        folder.resolve("emberwell.properties"),
        "emberwell.database.user=file\nemberwell.database.url=jdbc:postgresql://h/d\n");
    Given given = new Given(Map.of("EMBERWELL_DATABASE_USER", "variable"));
    given.readHome(folder);
    assertEquals(Optional.of("variable"), given.value("emberwell.database.user"));
    assertEquals(Optional.of("jdbc:postgresql://h/d"), given.value("emberwell.database.url"));
    assertEquals(Optional.empty(), given.value("emberwell.database.password"));
  }

  @Test
  void aSecretMayStandInAFile() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret"), "s3cret\n");
    Given given = new Given(Map.of("EMBERWELL_DATABASE_PASSWORD_FILE", secret.toString()));
    assertEquals(Optional.of("s3cret"), given.value("emberwell.database.password"));
  }

  @Test
  void aSecretFileThatIsNotThereIsRefused() {
    Given given = new Given(Map.of("EMBERWELL_DATABASE_PASSWORD_FILE", "/nowhere"));
    LaunchException refused =
        assertThrows(LaunchException.class, () -> given.value("emberwell.database.password"));
    assertEquals(ExitCode.WRONG_SETTING, refused.exitCode());
  }

  @Test
  void defaultsComeFromApplicationProperties() {
    Given given = new Given(Map.of());
    assertEquals("8080", given.valueOrDefault("emberwell.port"));
    assertEquals(
        System.getProperty("user.home") + "/.emberwell-demo",
        given.valueOrDefault("emberwell.demo-home"));
  }

  @Test
  void aDatabaseUrlMayCarryItsLogin() {
    Database database = Database.of("postgresql://ann:pw@db.example:5433/club?ssl=true", "", "");
    assertEquals("jdbc:postgresql://db.example:5433/club?ssl=true", database.url());
    assertEquals("ann", database.user());
    assertEquals("pw", database.password());
  }

  @ParameterizedTest
  @ValueSource(strings = {"jdbc:mysql://h/d", "h/d", "jdbc:postgresql://h:{}/d", "http://h/d"})
  void aDatabaseUrlThatIsNoneIsRefusedWithoutRepeatingIt(String url) {
    LaunchException refused = assertThrows(LaunchException.class, () -> Database.of(url, "u", "p"));
    assertEquals(ExitCode.WRONG_SETTING, refused.exitCode());
    assertFalse(refused.getMessage().contains(url));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "settings.club.example",
        "ftp://x.example",
        "https://x.example/club",
        "https://",
        "https://x.example/",
        "https://x.example?a=1",
        "https://ann@x.example",
        "https://x.example:0",
        "not a url"
      })
  void aPublicUrlThatIsNoneIsRefused(String url) {
    assertFalse(Address.isPublicUrl(url));
  }

  @Test
  void aPublicUrlNeedsOnlySchemeAndHost() {
    assertTrue(Address.isPublicUrl("https://settings.club.example"));
    assertTrue(Address.isPublicUrl("http://127.0.0.1:8080"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1", "65536", "http", ""})
  void aPortThatIsNoneIsRefused(String port) {
    assertThrows(LaunchException.class, () -> Address.of("127.0.0.1", port));
  }

  @Test
  void onlyAddressesOfThisMachineAreLoopback() {
    assertTrue(new Address("127.0.0.1", 1).isLoopback());
    assertTrue(new Address("localhost", 1).isLoopback());
    assertFalse(new Address("0.0.0.0", 1).isLoopback());
  }
}
