package club.emberwell.exchange;

import club.emberwell.exchange.MemberDownload.Zip;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** A member's reports. Settings and effects are facts and can stay; notes and photos never do. */
@Priority(400)
@ApplicationScoped
class ReportData implements PersonalData {
  private static final String ALL =
      """
      select e.*, r.*,
        (select jsonb_agg(to_jsonb(t) - 'report_id' order by t.position) from trial t
          where t.report_id = r.id) as trials,
        (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
          where v.entry_id = r.id) as revisions
      from report r join entry e using (id)
      where e.member_id = :member
      order by e.number""";

  private static final String MINE =
      "(select id from entry where kind = 'report' and member_id = :member)";

  /** What nobody but the member and moderators ever saw goes in any case. */
  private static final String HIDDEN =
      "(select id from entry where kind = 'report' and member_id = :member and state <> 'live')";

  /**
   * Photos go whatever is chosen, comments with their report; whoever follows the changes looks at
   * repeats again.
   */
  private static final String ERASING =
      """
      update report set written = written - 'repeatOf' where repeat_of in LEAVING;
      update entry_revision
         set written = written - 'repeatOf', interpreted = interpreted - 'repeatOf'
       where written ->> 'repeatOf' in (
         select cast(g.id as text) from entry g where g.id in LEAVING);
      update entry set updated_at = updated_at where id in (
        select id from report where repeat_of in LEAVING);
      update report set repeat_of = null where repeat_of in LEAVING;
      delete from entry_revision where entry_id in (
        select id from entry
         where kind = 'photo' and member_id = :member
           or kind in ('photo', 'comment') and parent_id in LEAVING);
      delete from entry
       where kind = 'photo' and member_id = :member
         or kind in ('photo', 'comment') and parent_id in LEAVING;
      delete from entry_revision where entry_id in LEAVING;
      delete from entry where id in LEAVING;
      update report
         set notes = null, lot = null, written_hash = null, written = written - 'notes' - 'lot'
       where id in MINE;
      update entry set updated_at = updated_at where id in MINE;
      update entry_revision
         set reason = null, written = written - 'notes' - 'lot',
             interpreted = interpreted - 'notes' - 'lot'
       where entry_id in MINE;
      update entry_revision set reason = null where member_id = :member and reason is not null""";

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows("reports.json", ALL),
        new Rows(
            "photos.json",
            """
            select e.id, e.parent_id as report_id, p.width, p.height, p.size_bytes, e.created_at
            from photo p join entry e using (id)
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public void addFiles(UUID member, MemberRowsRepository rows, Zip zip) {
    for (UUID photo :
        rows.ids(
            "select id from photo join entry using (id) where member_id = :member order by number",
            member)) {
      zip.file("photos/%s.jpg".formatted(photo), rows.picture(photo));
    }
  }

  @Override
  public String erasing(Choice choice) {
    String leaving = choice == Choice.KEEP ? HIDDEN : MINE;
    return ERASING.replace("LEAVING", leaving).replace("MINE", MINE);
  }
}
