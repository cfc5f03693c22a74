package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** A member's reports. Settings and effects are facts and can stay; notes never do. */
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

  /** Comments go with their report; whoever follows the changes looks at repeats again. */
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
        select id from entry where kind = 'comment' and parent_id in LEAVING);
      delete from entry where kind = 'comment' and parent_id in LEAVING;
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
    return List.of(new Rows("reports.json", ALL));
  }

  @Override
  public String erasing(Choice choice) {
    String leaving = choice == Choice.KEEP ? HIDDEN : MINE;
    return ERASING.replace("LEAVING", leaving).replace("MINE", MINE);
  }
}
