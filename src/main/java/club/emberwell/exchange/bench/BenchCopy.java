package club.emberwell.exchange.bench;

import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryAccess;
import club.emberwell.laser.Process;
import club.emberwell.member.Actor;
import club.emberwell.member.pace.Throttle;
import club.emberwell.quantity.UtcTime;
import club.emberwell.remark.Coded;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Saves all that lies on a member's bench into one file. */
@ApplicationScoped
public class BenchCopy {
  private static final String ASKED = "save-bench";
  private static final String SCHEMAS = "shared/schemas/bench/";
  private static final String SHARED_SCHEMA = "thing.schema.json";
  private static final String FORMAT = "shared/formats/bench-copy.md";

  /** As long as the statements of the largest bench may take. */
  private static final int SECONDS = 120;

  private final BenchLines lines;
  private final SavedBench saved;
  private final Throttle throttle;
  private final CopyLimits limits;
  private final CatalogService catalog;
  private final String version;

  BenchCopy(
      BenchLines lines,
      SavedBench saved,
      Throttle throttle,
      CopyLimits limits,
      CatalogService catalog,
      @ConfigProperty(name = "quarkus.application.version") String version) {
    this.lines = lines;
    this.saved = saved;
    this.throttle = throttle;
    this.limits = limits;
    this.catalog = catalog;
    this.version = version;
  }

  /**
   * Saves the actor's bench below the system's temporary folder, and remembers when.
   *
   * @return the file; whoever asked sends it and deletes it
   */
  public Path save(Actor actor) {
    EntryAccess.signedIn(actor);
    throttle.pause(ASKED, actor.memberId().toString(), limits.pause());
    Instant now = Instant.now();
    return QuarkusTransaction.requiringNew()
        .timeout(SECONDS)
        .call(
            () -> {
              Path file = packed(actor, now);
              saved.note(actor.memberId(), now);
              return file;
            });
  }

  private Path packed(Actor actor, Instant now) {
    try {
      Path file = Files.createTempFile("emberwell-bench-", ".zip");
      try (CopyZip zip = new CopyZip(file)) {
        fill(zip, actor, UtcTime.of(now));
      } catch (IOException | RuntimeException e) {
        Files.delete(file);
        throw e;
      }
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void fill(CopyZip zip, Actor actor, String now) throws IOException {
    zip.add("README.md", resource(FORMAT));
    Map<BenchKind, List<BenchLine>> bench = new EnumMap<>(BenchKind.class);
    for (BenchKind kind : BenchKind.values()) {
      try (Stream<BenchLine> found = lines.of(actor.memberId(), kind)) {
        bench.put(kind, new ArrayList<>(found.peek(this::caution).toList()));
      }
      zip.lines(kind.lines(), bench.get(kind).stream());
    }
    for (List<BenchLine> things : bench.values()) {
      for (BenchLine line : things) {
        if (line.picture() != null) {
          zip.add(line.picture(), lines.picture(line));
        }
      }
    }
    zip.add("schema/" + SHARED_SCHEMA, resource(SCHEMAS + SHARED_SCHEMA));
    for (BenchKind kind : BenchKind.values()) {
      zip.add("schema/" + kind.schema(), resource(SCHEMAS + kind.schema()));
    }
    zip.add("bench.html", out -> readable(out, bench, actor.handle(), now));
    zip.manifest(
        new CopyManifest(
            CopyManifest.FORMAT, CopyManifest.VERSION, version, now, actor.handle(), zip.parts()));
  }

  /** Settings do not leave without what may harm where they are used. */
  private void caution(BenchLine line) {
    CautionMark.of(
            catalog
                .cautions()
                .asWritten(
                    line.said("material"),
                    line.said("coating"),
                    Coded.of(Process.class, line.said("process")).orElse(null)))
        .ifPresent(line::caution);
  }

  private static Integer readable(
      OutputStream out, Map<BenchKind, List<BenchLine>> bench, String member, String now)
      throws IOException {
    try (ReadableCopy page = new ReadableCopy(out, member, now)) {
      for (Map.Entry<BenchKind, List<BenchLine>> kind : bench.entrySet()) {
        page.heading(kind.getKey(), kind.getValue().size());
        for (BenchLine line : kind.getValue()) {
          page.thing(line);
        }
      }
    }
    return null;
  }

  /** Of this program. */
  private static byte[] resource(String name) throws IOException {
    try (InputStream in =
        Thread.currentThread().getContextClassLoader().getResourceAsStream(name)) {
      if (in == null) {
        throw new IOException("the program lacks " + name);
      }
      return in.readAllBytes();
    }
  }
}
