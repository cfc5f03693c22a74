package club.emberwell.talk;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Setting;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** People and reports for the tests of talk. */
@ApplicationScoped
public class Club {
  private final EntityManager db;
  private final ReportService reports;

  Club(EntityManager db, ReportService reports) {
    this.db = db;
    this.reports = reports;
  }

  public Actor member() {
    return person(Role.MEMBER);
  }

  public Actor person(Role role) {
    UUID id = UUID.randomUUID();
    String handle = "t" + id.toString().substring(0, 13);
    run(
        "insert into member (id, handle, email, email_confirmed_at, role, status) values ('%s', '%s', '%s', now(), '%s', 'active')"
            .formatted(id, handle, handle + "@club.example", role.name().toLowerCase(Locale.ROOT)));
    return new Actor(id, handle, role, UnitPreferences.metric());
  }

  public void run(String sql) {
    QuarkusTransaction.requiringNew().run(() -> db.createNativeQuery(sql).executeUpdate());
  }

  public UUID report(Actor by, String material, String notes) {
    WrittenLaser laser =
        new WrittenLaser(
            "co2", text("10.6 um"), text("40 W"), "gantry", "cw", null, text("150 um"));
    WrittenSettings settings =
        WrittenSettings.NONE
            .with(Setting.POWER, text("60 %"))
            .with(Setting.SPEED, text("400 mm/s"))
            .with(Setting.LINE_SPACING, text("0.1 mm"))
            .with(Setting.PASSES, 1);
    WrittenReport written =
        new WrittenReport(
            null,
            laser,
            WrittenWork.of("surface engraving")
                .with(WorkProperty.MATERIAL, material)
                .with(WorkProperty.NOTES, notes),
            List.of(new WrittenTrial(null, null, settings, "right", 4, List.of())),
            null,
            null);
    return reports.post(by, Posting.ofApi(null, written)).snapshot().id();
  }

  private static WrittenQuantity text(String text) {
    return WrittenQuantity.of(text);
  }

  public static TalkPosting posting(String title, String text, Ties ties) {
    return TalkPosting.of(null, new WrittenTalk(title, text, ties));
  }

  public static Ties about(String material) {
    return new Ties(material, null, null, null, null, null, null);
  }
}
