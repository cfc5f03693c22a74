package club.emberwell.contract;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.StringWriter;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/**
 * A stranger has the document and nothing else: a client is generated from it ({@code
 * openapi-generator} in {@code pom.xml}, before the tests are compiled), and a journey that is
 * written against this client alone, {@code src/test/client}, goes through what members do.
 */
@QuarkusTest
class GeneratedClientTest {
  private static final Path CLIENT = Path.of("target/generated-client/src/main/java");
  private static final Path JOURNEY = Path.of("src/test/client");
  private static final Path CLASSES = Path.of("target/generated-client/classes");

  @TestHTTPResource("/")
  URI club;

  @Test
  void aClientMadeFromTheDocumentDoesWhatMembersDo() throws Exception {
    assertTrue(Files.exists(CLIENT), "mvn generate-test-sources makes the client");
    compile();
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {CLASSES.toUri().toURL()}, getClass().getClassLoader())) {
      @SuppressWarnings("unchecked")
      Consumer<URI> journey =
          (Consumer<URI>) loader.loadClass("stranger.Journey").getConstructor().newInstance();
      journey.accept(club);
    }
  }

  private static void compile() throws IOException {
    List<Path> sources;
    try (Stream<Path> client = Files.walk(CLIENT);
        Stream<Path> journey = Files.walk(JOURNEY)) {
      sources =
          Stream.concat(client, journey)
              .filter(file -> file.toString().endsWith(".java"))
              .collect(Collectors.toList());
    }
    Files.createDirectories(CLASSES);
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter told = new StringWriter();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      List<String> options =
          List.of("-d", CLASSES.toString(), "-proc:none", "-nowarn", "-implicit:none");
      boolean done =
          compiler
              .getTask(told, files, null, options, null, files.getJavaFileObjectsFromPaths(sources))
              .call();
      assertTrue(done, told::toString);
    }
  }
}
