package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** What a member told the desk, and what the desk noted and decided about the member. */
@ApplicationScoped
class DeskData implements PersonalData {
  private static final int AFTER_WHAT_IT_SPEAKS_OF = 400;

  private static final String ERASING =
      """
      delete from desk_trust where member_id = :member;
      delete from desk_flag where member_id = :member and state = 'open';
      update desk_flag set note = null where member_id = :member and note is not null;
      delete from desk_rule_note where entry_id in (
        select id from entry where member_id = :member);
      delete from desk_undo where member_id = :member;
      delete from desk_caution_proposal where member_id = :member and state = 'waiting'""";

  private final MemberRowsRepository rows;

  DeskData(MemberRowsRepository rows) {
    this.rows = rows;
  }

  @Override
  public int order() {
    return AFTER_WHAT_IT_SPEAKS_OF;
  }

  @Override
  public void write(UUID member, Parcel parcel) {
    parcel.rows(
        "flags.json",
        rows.json(
            """
            select e.kind, f.entry_id, f.reason, f.note, f.state, f.created_at, f.decided_at,
              f.outcome
            from desk_flag f join entry e on e.id = f.entry_id
            where f.member_id = :member
            order by f.created_at""",
            member));
    parcel.rows(
        "decisions.json",
        rows.json(
            """
            select e.kind, v.entry_id, v.rule, v.action, v.reason, v.at
            from entry_revision v join entry e on e.id = v.entry_id
            where e.member_id = :member
              and v.action in ('held', 'removed', 'approved', 'restored')
            order by v.seq""",
            member));
    parcel.rows(
        "caution-proposals.json",
        rows.json(
            """
            select caution_id, rule, why, created_at, state, decided_at, outcome
            from desk_caution_proposal where member_id = :member order by created_at""",
            member));
  }

  @Override
  public void erase(UUID member, Choice choice) {
    rows.run(ERASING, member);
  }
}
