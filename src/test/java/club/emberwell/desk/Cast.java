package club.emberwell.desk;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
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
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** People and their entries for the tests of the desk. */
@ApplicationScoped
public class Cast {
  private final EntityManager db;
  private final ReportService reports;
  private final TalkService talk;

  Cast(EntityManager db, ReportService reports, TalkService talk) {
    this.db = db;
    this.reports = reports;
    this.talk = talk;
  }

  public Actor member() {
    return person(Role.MEMBER);
  }

  public Actor moderator() {
    return person(Role.MODERATOR);
  }

  public Actor person(Role role) {
    UUID id = UUID.randomUUID();
    String handle = "d" + id.toString().substring(0, 13);
    run(
        "insert into member (id, handle, role, status) values ('%s', '%s', '%s', 'active')"
            .formatted(id, handle, role.name().toLowerCase(Locale.ROOT)));
    return new Actor(id, handle, role, UnitPreferences.metric());
  }

  public void run(String sql) {
    QuarkusTransaction.requiringNew().run(() -> db.createNativeQuery(sql).executeUpdate());
  }

  public long count(String sql) {
    return QuarkusTransaction.requiringNew()
        .call(() -> ((Number) db.createNativeQuery(sql).getSingleResult()).longValue());
  }

  public EntryRef report(Actor by) {
    return report(by, "maple", "400 mm/s", "Words of " + UUID.randomUUID());
  }

  public static WrittenReport written(String material, String speed, String notes) {
    WrittenLaser laser =
        new WrittenLaser(
            "co2", text("10.6 um"), text("40 W"), "gantry", "cw", null, text("150 um"));
    WrittenSettings settings =
        WrittenSettings.NONE
            .with(Setting.POWER, text("60 %"))
            .with(Setting.SPEED, text(speed))
            .with(Setting.LINE_SPACING, text("0.1 mm"))
            .with(Setting.PASSES, 1);
    return new WrittenReport(
        null,
        laser,
        WrittenWork.of("surface engraving")
            .with(WorkProperty.MATERIAL, material)
            .with(WorkProperty.NOTES, notes),
        List.of(new WrittenTrial(null, null, settings, "right", 4, List.of())),
        null,
        null);
  }

  public EntryRef report(Actor by, String material, String speed, String notes) {
    UUID id =
        reports.post(by, Posting.ofApi(null, written(material, speed, notes))).snapshot().id();
    return new EntryRef(EntryKind.REPORT, id);
  }

  public EntryRef question(Actor by, String text) {
    UUID id =
        talk.post(
                by,
                EntryKind.QUESTION,
                TalkPosting.of(null, new WrittenTalk("How do I engrave this?", text, Ties.NONE)))
            .entry()
            .id();
    return new EntryRef(EntryKind.QUESTION, id);
  }

  private static WrittenQuantity text(String text) {
    return WrittenQuantity.of(text);
  }
}
