package club.emberwell;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What {@code deploy/ASVS.csv} lets pass because it is not there. */
class AbsentTest {
  private static final String NAME = "AbsentTest.whatTheTableSaysIsNotThereIsNotThere";

  /** Requirements, and how what they speak of would look in the program or in what pages load. */
  private static final Map<String, String> MARKS =
      Map.ofEntries(
          entry("V1.2.6 V1.3.8", "javax\\.naming|(?i:\\bldap)"),
          entry("V1.2.7", "javax\\.xml\\.xpath"),
          entry("V1.2.8", "(?i:pdflatex|xelatex)"),
          entry("V1.3.2", "javax\\.script|\\beval\\(|new Function\\("),
          entry("V1.3.7", "qute\\.(Engine|Qute)\\b"),
          entry("V1.3.9", "(?i:memcache)"),
          entry("V1.5.2", "ObjectInputStream|activateDefaultTyping|JsonTypeInfo\\.Id\\."),
          entry("V3.5.5", "window\\.(addEventListener\\(\"message\"|onmessage)"),
          entry("V4.3.1 V4.3.2", "(?i:graphql)"),
          entry("V4.4.1 V4.4.2 V4.4.3 V4.4.4", "(?i:websocket)"),
          entry("V6.2.10", "(?i:password.?(expir|max.?age|until))"),
          entry("V6.4.2", "(?i:password.?hint|(secret|security).?question)"),
          entry("V6.8.3", "(?i:\\bsaml)"),
          entry("V11.3.1 V11.3.2 V11.3.3", "javax\\.crypto\\.Cipher|crypto\\.engines"),
          entry("V11.4.1", "\"(MD5|SHA-?1|HmacMD5|HmacSHA1)\""),
          entry(
              "V17.1.1 V17.2.1 V17.2.2 V17.2.3 V17.2.4 V17.3.1 V17.3.2",
              "RTCPeerConnection|(?i:webrtc)"));

  private static List<Path> sources() throws IOException {
    try (Stream<Path> java = Files.walk(Path.of("src/main/java"));
        Stream<Path> scripts = Files.walk(Path.of("src/main/resources/META-INF/resources"))) {
      return Stream.concat(java, scripts)
          .filter(each -> each.toString().matches(".*\\.(java|js)"))
          .toList();
    }
  }

  @Test
  void whatTheTableSaysIsNotThereIsNotThere() throws IOException {
    TreeSet<String> found = new TreeSet<>();
    for (Path file : sources()) {
      String source = Files.readString(file);
      MARKS.forEach(
          (ids, mark) -> {
            if (Pattern.compile(mark).matcher(source).find()) {
              found.add(ids + " " + file);
            }
          });
    }
    assertEquals(new TreeSet<>(), found);
  }

  @Test
  void theMarksAreThoseTheTableHopesFor() throws IOException {
    TreeSet<String> hoped =
        Files.readAllLines(Path.of("deploy/ASVS.csv")).stream()
            .filter(line -> line.contains(NAME))
            .map(line -> line.substring(0, line.indexOf(',')))
            .collect(Collectors.toCollection(TreeSet::new));
    TreeSet<String> marked = new TreeSet<>();
    MARKS.keySet().forEach(ids -> marked.addAll(List.of(ids.split(" "))));
    assertEquals(hoped, marked);
  }
}
