package club.emberwell.exchange;

import club.emberwell.member.PersonalData;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** What a member told the desk, and what the desk noted and decided about the member. */
@ApplicationScoped
class DeskData implements PersonalData {
  private static final int AFTER_WHAT_IT_SPEAKS_OF = 400;

  private static final String GONE =
      "not exists (select 1 from report r where r.id = item_id)"
          + " and not exists (select 1 from talk_entry t where t.id = item_id)"
          + " and not exists (select 1 from photo p where p.id = item_id)";

  private static final List<String> ERASING =
      List.of(
          "delete from desk_trust where member_id = :member",
          "delete from desk_flag where member_id = :member and state = 'open'",
          "update desk_flag set note = null where member_id = :member and note is not null",
          "delete from desk_rule_note where member_id = :member",
          "delete from desk_decision where author_id = :member",
          "delete from desk_undo where member_id = :member",
          "delete from desk_caution_proposal where member_id = :member and state = 'waiting'",
          "delete from desk_flag where GONE",
          "delete from watch_hit where not exists (select 1 from report r where r.id = entry_id)"
              + " and not exists (select 1 from talk_entry t where t.id = entry_id)");

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
            "select item_kind, item_id, reason, note, state, created_at, decided_at, outcome"
                + " from desk_flag where member_id = :member order by created_at",
            member));
    parcel.rows(
        "decisions.json",
        rows.json(
            "select item_kind, item_id, rule, action, reason, at from desk_decision"
                + " where author_id = :member order by number",
            member));
    parcel.rows(
        "caution-proposals.json",
        rows.json(
            "select caution_id, rule, why, created_at, state, decided_at, outcome"
                + " from desk_caution_proposal where member_id = :member order by created_at",
            member));
  }

  @Override
  public void erase(UUID member, Choice choice) {
    rows.run(ERASING.stream().map(sql -> sql.replace("GONE", GONE)).toList(), member);
  }
}
