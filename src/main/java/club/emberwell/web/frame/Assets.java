package club.emberwell.web.frame;

import io.quarkus.runtime.LaunchMode;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The site's style and scripts: small files while they are written, one stylesheet and one script
 * when they are sent. The name of each holds a hash of its bytes, so that it may be kept for a
 * year. While developing, the small files are sent as they are.
 */
@Startup
@ApplicationScoped
public class Assets {
  private static final List<String> STYLES =
      List.of(
          "base.css",
          "layout.css",
          "forms.css",
          "posting.css",
          "search.css",
          "hits.css",
          "photos.css",
          "bench.css",
          "steps.css",
          "talk.css",
          "desk.css",
          "plot.css",
          "answer.css",
          "planning.css",
          "judging.css",
          "stock.css",
          "phone.css",
          "contrast.css",
          "print.css");

  private static final List<String> SCRIPTS =
      List.of("emberwell.js", "kept.js", "outbox.js", "drafts.js", "photos.js", "phone.js");

  /** Only one page, seldom opened, needs each of these: all others do without its bytes. */
  private static final List<String> OF_ONE_PAGE =
      List.of("judging.js", "corners.js", "waiting.js", "cards.css");

  private static final int HASH_LETTERS = 12;
  private static final String OWN = "META-INF/resources/assets/";
  private static final String DEV = "dev";
  private static final boolean DEV_MODE = LaunchMode.current() == LaunchMode.DEVELOPMENT;

  private final Htmx htmx = Htmx.packaged();
  private final Map<String, Sent> sent = new LinkedHashMap<>();
  private final String version;
  private final String stamp;

  /** A file as it is sent; {@code hash} is of its text. */
  record Sent(String name, String hash, String text) {
    static Sent of(String name, String text) {
      return new Sent(name, shortened(text), text);
    }

    String address() {
      int dot = name.lastIndexOf('.');
      return "/assets/" + name.substring(0, dot) + "." + hash + name.substring(dot);
    }
  }

  Assets(@ConfigProperty(name = "quarkus.application.version") String version) {
    this.version = version;
    keep(Sent.of("emberwell.css", text(STYLES)));
    keep(Sent.of("emberwell.js", htmx.text() + text(SCRIPTS)));
    OF_ONE_PAGE.forEach(name -> keep(Sent.of(name, text(name))));
    String hashes = sent.values().stream().map(Sent::hash).collect(Collectors.joining());
    stamp = DEV_MODE ? DEV : version + "-" + shortened(hashes);
  }

  private void keep(Sent file) {
    sent.put(file.name(), file);
  }

  /** Addresses of what gives every page its look. */
  List<String> styleSheets() {
    return DEV_MODE
        ? STYLES.stream().map(Assets::plain).toList()
        : List.of(address("emberwell.css"));
  }

  /** Addresses of the scripts of every page. */
  List<String> scripts() {
    return DEV_MODE
        ? Stream.concat(Stream.of(htmx.address()), SCRIPTS.stream().map(Assets::plain)).toList()
        : List.of(address("emberwell.js"));
  }

  /** The address of a file of ours that not every page needs; pictures keep their names. */
  String address(String name) {
    return DEV_MODE || !sent.containsKey(name) ? plain(name) : sent.get(name).address();
  }

  /** The text behind an address; empty where the hash is not that of this version. */
  Optional<String> find(String name, String hash) {
    return Optional.ofNullable(sent.get(name))
        .filter(file -> file.hash().equals(hash))
        .map(Sent::text);
  }

  /** The version of the program. */
  String version() {
    return version;
  }

  /** Another one with each version of the program and each change of a file. */
  public String stamp() {
    return stamp;
  }

  /** Some of our own files as one, in the order given. */
  public static String text(List<String> names) {
    return names.stream().map(Assets::text).collect(Collectors.joining("\n"));
  }

  private static String plain(String name) {
    return "/assets/" + name;
  }

  private static String text(String name) {
    return read(OWN + name);
  }

  private static String read(String resource) {
    ClassLoader loader = Thread.currentThread().getContextClassLoader();
    try (InputStream in = loader.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program has no file " + resource);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String shortened(String text) {
    return DigestUtils.sha256Hex(text).substring(0, HASH_LETTERS);
  }

  /** The library for updates in place, as its jar has it; its licence stays before it. */
  private record Htmx(String version) {
    private static final String ABOUT = "META-INF/maven/org.webjars.npm/htmx.org/pom.properties";

    static Htmx packaged() {
      Properties about = new Properties();
      try {
        about.load(new StringReader(read(ABOUT)));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return new Htmx(about.getProperty("version"));
    }

    private String folder() {
      return "webjars/htmx.org/" + version + "/";
    }

    String address() {
      return "/" + folder() + "dist/htmx.min.js";
    }

    String text() {
      String licence = read("META-INF/resources/" + folder() + "LICENSE");
      return "/* htmx "
          + version
          + "\n\n"
          + licence.strip()
          + "\n*/\n"
          + read("META-INF/resources" + address())
          + ";\n";
    }
  }
}
