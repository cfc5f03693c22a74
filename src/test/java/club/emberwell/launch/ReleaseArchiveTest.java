package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What an operator is handed: the archive that deploy/release.sh packs from what Maven built. */
@Tag("packaged")
class ReleaseArchiveTest {
  private static final Path OUT = Path.of("target/release");

  /** {@code (licence) name (group:artifact:version - address)}. */
  private static final Pattern PART = Pattern.compile("\\(([^() :]+):([^() :]+):([^() :]+) - .*");

  private static String run(Path folder, String... words) throws Exception {
    Process process =
        new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    return said;
  }

  @Test
  void theArchiveHoldsTheProgramWithAllThatBelongsToIt() throws Exception {
    run(Path.of("."), "bash", "deploy/release.sh", "--pack");
    run(OUT, "sha256sum", "--check", "SHA256SUMS");
    String sums = Files.readString(OUT.resolve("SHA256SUMS"));
    String archive = sums.strip().replaceFirst(".* ", "");
    List<String> inside = run(OUT, "tar", "tf", archive).lines().toList();
    Set<String> top =
        inside.stream()
            .map(each -> each.split("/"))
            .filter(each -> each.length > 1)
            .map(each -> each[1])
            .collect(Collectors.toCollection(TreeSet::new));
    // made by the whole release only
    top.remove("emberwell.cdx.json");
    assertEquals(
        new TreeSet<>(
            List.of(
                "ASVS.csv",
                "ASVS.md",
                "TROUBLES.md",
                "CHANGELOG.md",
                "LICENSE",
                "NOTICE",
                "README.md",
                "SECURITY.md",
                "THIRD-PARTY.txt",
                "UPGRADING.md",
                "completion",
                "emberwell",
                "emberwell.1",
                "emberwell.env",
                "emberwell.service",
                "quarkus-app")),
        top);
  }

  /** Fails after a change of dependencies: {@code mvn license:add-third-party} mends it. */
  @Test
  void theNoticeNamesEveryPartOfOthersAndNoOther() throws IOException {
    Set<String> packaged = new TreeSet<>();
    try (Stream<Path> files = Files.walk(PackagedProgram.PACKAGED.resolve("lib"))) {
      files
          .map(each -> each.getFileName().toString())
          .filter(ReleaseArchiveTest::isJar)
          .forEach(packaged::add);
    }
    Set<String> named = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of("deploy/THIRD-PARTY.txt"))) {
      Matcher part = PART.matcher(line);
      if (part.find()) {
        named.add(part.group(1) + "." + part.group(2) + "-" + part.group(3) + ".jar");
        assertFalse(line.contains("Unknown license"), line);
      }
    }
    assertEquals(String.join("\n", packaged), String.join("\n", named));
  }

  private static boolean isJar(String name) {
    return name.endsWith(".jar");
  }
}
