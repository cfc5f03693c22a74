package club.emberwell.exchange;

import club.emberwell.member.PersonalData;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** A member's reports. Settings and effects are facts and can stay; notes and photos never do. */
@ApplicationScoped
class ReportData implements PersonalData {
  private static final int ORDER = 300;
  private static final String ALL =
      "select r.*,"
          + " (select jsonb_agg(to_jsonb(t) - 'report_id' order by t.position) from trial t"
          + " where t.report_id = r.id) as trials,"
          + " (select jsonb_agg(to_jsonb(v) - 'report_id' order by v.version)"
          + " from report_revision v where v.report_id = r.id) as revisions"
          + " from report r where member_id = :member order by number";

  private static final String MINE = "(select id from report where member_id = :member)";

  /** What nobody but the member and moderators ever saw goes in any case. */
  private static final String HIDDEN =
      "(select id from report where member_id = :member and state <> 'LIVE')";

  private static final List<String> ERASING =
      List.of(
          "insert into change_row (entity, entity_id) select 'report', id from report"
              + " where member_id = :member or repeat_of in LEAVING",
          "delete from photo where member_id = :member or report_id in LEAVING",
          "update report set written = written - 'repeatOf' where repeat_of in LEAVING",
          "update report_revision set written = written - 'repeatOf',"
              + " interpreted = "
              + without("'repeatOf'")
              + " where written ->> 'repeatOf' in"
              + " (select cast(g.id as text) from report g where g.id in LEAVING)",
          "update talk_entry set report_id = null where report_id in LEAVING",
          "delete from trial where report_id in LEAVING",
          "delete from report_revision where report_id in LEAVING",
          "update report set repeat_of = null where repeat_of in LEAVING",
          "delete from report where id in LEAVING",
          "update report set notes = null, lot = null, written_hash = '',"
              + " written = written - 'notes' - 'lot' where member_id = :member",
          "update report_revision set reason = null, written = written - 'notes' - 'lot',"
              + " interpreted = "
              + without("'notes' - 'lot'")
              + " where report_id in MINE",
          "update report_revision set reason = null"
              + " where editor_id = :member and reason is not null");

  private final MemberRowsRepository rows;

  ReportData(MemberRowsRepository rows) {
    this.rows = rows;
  }

  @Override
  public int order() {
    return ORDER;
  }

  @Override
  public void write(UUID member, Parcel parcel) {
    parcel.rows("reports.json", rows.json(ALL, member));
    parcel.rows(
        "photos.json",
        rows.json(
            "select id, report_id, width, height, size_bytes, created_at from photo"
                + " where member_id = :member order by number",
            member));
    for (UUID photo :
        rows.ids("select id from photo where member_id = :member order by number", member)) {
      parcel.file("photos/" + photo + ".jpg", rows.picture(photo));
    }
  }

  @Override
  public void erase(UUID member, Choice choice) {
    String leaving = choice == Choice.KEEP ? HIDDEN : MINE;
    rows.run(
        ERASING.stream().map(sql -> sql.replace("LEAVING", leaving).replace("MINE", MINE)).toList(),
        member);
  }

  /** Revisions that changed no words hold the JSON null there. */
  private static String without(String keys) {
    return "case when jsonb_typeof(interpreted) = 'object' then interpreted - "
        + keys
        + " else interpreted end";
  }
}
