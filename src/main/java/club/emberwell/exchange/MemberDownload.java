package club.emberwell.exchange;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.member.pace.Throttle;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.arc.All;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** All of one's data in one file: JSON as it is stored, and pictures. */
@ApplicationScoped
public class MemberDownload {
  private static final String ASKED = "download-member";
  private static final String READ_ME =
"""
Everything this club keeps about you, as it is stored.

account.json      your account; the password is kept as a hash only and is not in here
sessions.json     where you are signed in; tokens.json: keys you made for programs
sign-ins.json     who used your account lately, and from where
machines.json     your machines; "written" is what you typed
eyewear.json      your glasses; rooms.json: your rooms with what is checked there
recipes.json      your recipes with every revision, and the links to their job cards: when made,
                  last opened and ended; what a link was is kept nowhere
reports.json      your reports: "written" is what you typed, the rest is how it was read, with
                  trials and every revision; lengths in mm, speeds in mm/s, power in W
photos.json       your photos, with the files in photos/; chosen-photos.json: those of forms that
                  you did not post, with the files in chosen-photos/
talk.json         your questions, answers and notices with every revision
watches.json      searches you keep; inbox.json: what they found
flags.json        what you told the moderators; decisions.json: what they decided about yours
log.json          what the club's log says you did
cautions.json     the cautions of this club: which of them go with the materials and coatings of
                  your reports, recipes and grids, their "scope" says by the same codes

Each .json file is a list. Times are in UTC.
""";

  private final List<PersonalData> features;
  private final MemberRowsRepository rows;
  private final Throttle throttle;
  private final PersonalDataLimits limits;
  private final CatalogService catalog;
  private final ObjectMapper json;

  MemberDownload(
      @All List<PersonalData> features,
      MemberRowsRepository rows,
      Throttle throttle,
      PersonalDataLimits limits,
      CatalogService catalog,
      ObjectMapper json) {
    this.features = features;
    this.rows = rows;
    this.throttle = throttle;
    this.limits = limits;
    this.catalog = catalog;
    this.json = json;
  }

  /**
   * Packs a member's data into a zip file below the system's temporary folder.
   *
   * @return the file; whoever asked sends it and deletes it
   */
  public Path pack(Actor actor) {
    throttle.pause(ASKED, actor.memberId().toString(), limits.downloadPause());
    return QuarkusTransaction.requiringNew()
        .timeout(limits.downloadSeconds())
        .call(() -> written(actor.memberId()));
  }

  private Path written(UUID member) {
    try {
      Path file = Files.createTempFile("emberwell-data-", ".zip");
      try (ZipOutputStream zip =
          new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
        Zip parcel = new Zip(zip);
        parcel.file("README.txt", READ_ME.getBytes(StandardCharsets.UTF_8));
        parcel.file("cautions.json", json.writeValueAsBytes(catalog.cautions().rules()));
        for (PersonalData feature : features) {
          feature.lists().forEach(l -> parcel.rows(l.file(), rows.json(l.select(), member)));
          feature.addFiles(member, rows, parcel);
        }
      } catch (IOException | RuntimeException e) {
        Files.delete(file);
        throw e;
      }
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Fills the zip file entry by entry. */
  record Zip(ZipOutputStream out) {
    /** A list as JSON, of JSON texts. */
    void rows(String name, Stream<String> rows) {
      try (rows) {
        out.putNextEntry(new ZipEntry(name));
        print(out, "[");
        String before = "\n";
        for (Iterator<String> each = rows.iterator(); each.hasNext(); before = ",\n") {
          print(out, before + each.next());
        }
        print(out, "\n]\n");
        out.closeEntry();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    void file(String name, byte[] content) {
      try {
        out.putNextEntry(new ZipEntry(name));
        out.write(content);
        out.closeEntry();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static void print(OutputStream out, String text) throws IOException {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
  }
}
