package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** What a member told the desk, and what the desk noted and decided about the member. */
@Priority(300)
@ApplicationScoped
class DeskData implements PersonalData {
  private static final String ERASING =
      """
      delete from told where member_id = :member;
      delete from desk_trust where member_id = :member;
      delete from desk_flag where member_id = :member and state = 'open';
      update desk_flag set note = null where member_id = :member and note is not null;
      delete from desk_rule_note where entry_id in (
        select id from entry where member_id = :member);
      delete from desk_undo where member_id = :member;
      delete from desk_caution_proposal where member_id = :member and state = 'waiting'""";

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "flags.json",
            """
            select e.kind, f.entry_id, f.reason, f.note, f.state, f.created_at, f.decided_at,
              f.outcome
            from desk_flag f join entry e on e.id = f.entry_id
            where f.member_id = :member
            order by f.created_at"""),
        new Rows(
            "decisions.json",
            """
            select e.kind, v.entry_id, v.rule, v.action, v.reason, v.at
            from entry_revision v join entry e on e.id = v.entry_id
            where e.member_id = :member
              and v.action in ('held', 'removed', 'approved', 'restored')
            order by v.seq"""),
        new Rows("inbox-read.json", "select read_to from told where member_id = :member"),
        new Rows(
            "caution-proposals.json",
            """
            select caution_id, rule, why, created_at, state, decided_at, outcome
            from desk_caution_proposal where member_id = :member order by created_at"""));
  }

  @Override
  public String erasing(Choice choice) {
    return ERASING;
  }
}
