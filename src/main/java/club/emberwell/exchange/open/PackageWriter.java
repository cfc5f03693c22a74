package club.emberwell.exchange.open;

import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.Origin;
import club.emberwell.exchange.open.PackedFile.Packed;
import club.emberwell.listing.Csv;
import club.emberwell.member.Licence;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.report.SharedReports;
import club.emberwell.report.StoredReport;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedInputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.codec.digest.MessageDigestAlgorithms;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.context.ManagedExecutor;

/** Writes a package to the disk, reading the reports some at a time. */
@ApplicationScoped
class PackageWriter {
  /** Name of the zip file. */
  static final String ZIP = "laser-trials.zip";

  static final String READ_ME = "README.txt";
  static final String SUMS = "SHA256SUMS";
  static final String SIGNATURE = "SHA256SUMS.sig";
  static final String PUBLIC_KEY = "signing-key.pem";

  private static final int AT_ONCE = 500;

  private final SharedReports reports;
  private final ReportLines lines;
  private final CatalogService catalog;
  private final ClubOptions club;
  private final SigningKey key;
  private final ObjectMapper json;
  private final ManagedExecutor threads;
  private final String publicUrl;

  PackageWriter(
      SharedReports reports,
      ReportLines lines,
      CatalogService catalog,
      ClubOptions club,
      SigningKey key,
      ObjectMapper json,
      ManagedExecutor threads,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.reports = reports;
    this.lines = lines;
    this.catalog = catalog;
    this.club = club;
    this.key = key;
    this.json = json;
    this.threads = threads;
    this.publicUrl = publicUrl;
  }

  /** What was found while the reports went by. */
  private static final class Tally {
    private final Ordinals ordinals = new Ordinals();
    private final Set<Licence> licences = EnumSet.noneOf(Licence.class);
    private int trials;
    private int reports;

    DataPackage.Counts counts() {
      return new DataPackage.Counts(trials, reports, ordinals.members());
    }
  }

  /**
   * Writes all of it.
   *
   * @param folder an empty one
   * @param late when to give up
   */
  DataPackage write(Path folder, Instant late) throws IOException {
    Instant now = Instant.now().truncatedTo(ChronoUnit.MICROS);
    Tally tally = new Tally();
    List<Packed> packed = new ArrayList<>(data(folder, tally, late));
    packed.add(text(folder, Descriptor.WORDS, pretty().writeValueAsBytes(words())));
    DataPackage bare =
        new DataPackage(
            UUID.randomUUID(), now, tally.counts(), List.copyOf(tally.licences), null, List.of());
    List<DataFile> data = packed.stream().map(Packed::file).toList();
    packed.add(
        text(
            folder,
            Descriptor.NAME,
            pretty().writeValueAsBytes(Descriptor.of(bare, data, club.clubName(), publicUrl))));
    packed.add(text(folder, READ_ME, ReadMe.of(bare, club.clubName(), publicUrl)));
    sign(folder, packed);
    DataFile zip = zip(folder, packed, now);
    return new DataPackage(
        bare.id(),
        now,
        bare.counts(),
        bare.licences(),
        zip,
        packed.stream().map(Packed::file).toList());
  }

  private Object words() {
    return Skos.of(catalog.snapshot().vocabulary(), publicUrl);
  }

  private ObjectWriter pretty() {
    return json.writer().with(SerializationFeature.INDENT_OUTPUT);
  }

  /** The table and the lines side by side, so that each report is read once. */
  private List<Packed> data(Path folder, Tally tally, Instant late) throws IOException {
    ObjectWriter line = json.writer().without(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    PackedFile table = new PackedFile(Descriptor.TRIALS, folder);
    PackedFile whole = new PackedFile(Descriptor.REPORTS, folder);
    try (Writer rows = writer(table);
        Writer documents = writer(whole)) {
      Csv.line(rows, TrialTable.HEAD);
      List<StoredReport> some = ahead(0).join();
      while (!some.isEmpty()) {
        // read while these are written: each takes half the time
        CompletableFuture<List<StoredReport>> next =
            ahead(some.get(some.size() - 1).snapshot().number());
        for (StoredReport report : some) {
          if (!report.origin().equals(Origin.EXAMPLE)) {
            add(report, tally, catalog.cautions(), rows);
            line.writeValue(documents, lines.json(report));
            documents.write('\n');
          }
        }
        if (Instant.now().isAfter(late)) {
          throw new IOException("The data took too long to write.");
        }
        some = next.join();
      }
    }
    return List.of(table.done(), whole.done());
  }

  private CompletableFuture<List<StoredReport>> ahead(long after) {
    return threads.supplyAsync(
        () -> QuarkusTransaction.requiringNew().call(() -> reports.liveAfter(after, AT_ONCE)));
  }

  private static void add(StoredReport report, Tally tally, Cautions cautions, Writer rows)
      throws IOException {
    tally.reports++;
    tally.licences.add(report.snapshot().standing().licence());
    for (int place = 0; place < report.snapshot().trials().size(); place++) {
      tally.trials++;
      Csv.line(rows, TrialTable.cells(new TrialRow(report, place, tally.ordinals, cautions)));
    }
  }

  private static Writer writer(PackedFile file) {
    return new BufferedWriter(new OutputStreamWriter(file, StandardCharsets.UTF_8));
  }

  /** The sums of all that is there, in the form {@code sha256sum -c} reads, and a signature. */
  private void sign(Path folder, List<Packed> packed) throws IOException {
    String sums =
        packed.stream()
            .map(one -> one.file().sha256() + "  " + one.file().name() + "\n")
            .collect(Collectors.joining());
    byte[] text = sums.getBytes(StandardCharsets.US_ASCII);
    SigningKey.Signed signed = key.sign(text);
    packed.add(text(folder, SUMS, text));
    packed.add(text(folder, SIGNATURE, signed.signature()));
    packed.add(text(folder, PUBLIC_KEY, signed.publicKey().getBytes(StandardCharsets.US_ASCII)));
  }

  private static Packed text(Path folder, String name, byte[] content) throws IOException {
    PackedFile file = new PackedFile(name, folder);
    try (file) {
      file.write(content);
    }
    return file.done();
  }

  private static DataFile zip(Path folder, List<Packed> packed, Instant now) throws IOException {
    Path file = folder.resolve(ZIP);
    try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(file)) {
      for (Packed one : packed) {
        ZipArchiveEntry entry = new ZipArchiveEntry(one.file().name());
        entry.setTime(now.toEpochMilli());
        entry.setMethod(ZipArchiveEntry.DEFLATED);
        entry.setSize(one.file().bytes());
        entry.setCompressedSize(Files.size(one.bytes()));
        entry.setCrc(one.crc());
        try (InputStream bytes = new BufferedInputStream(Files.newInputStream(one.bytes()))) {
          zip.addRawArchiveEntry(entry, bytes);
        }
        Files.delete(one.bytes());
      }
    }
    return new DataFile(
        ZIP, Files.size(file), new DigestUtils(MessageDigestAlgorithms.SHA_256).digestAsHex(file));
  }
}
