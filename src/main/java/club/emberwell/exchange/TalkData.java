package club.emberwell.exchange;

import club.emberwell.member.PersonalData;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/**
 * A member's questions, answers, notices and watches. Texts go whatever is chosen; a question that
 * others answered stays as an empty frame round their answers.
 */
@ApplicationScoped
class TalkData implements PersonalData {
  private static final int ORDER = 200;
  private static final String WITH_REVISIONS =
      "select e.*, (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version)"
          + " from talk_revision v where v.entry_id = e.id) as revisions"
          + " from talk_entry e where member_id = :member order by number";

  /** Own entries under which nobody else has written. */
  private static final String ALONE =
      "(select e.id from talk_entry e where e.member_id = :member and not exists (select 1"
          + " from talk_entry a where a.question_id = e.id and a.member_id <> :member))";

  private static final List<String> ERASING =
      List.of(
          "insert into change_row (entity, entity_id)"
              + " select lower(kind), id from talk_entry where member_id = :member",
          "insert into change_row (entity, entity_id) select 'question', q.id from talk_entry q"
              + " where q.id in (select question_id from talk_entry where member_id = :member)",
          "update talk_entry set accepted_id = null where accepted_id in"
              + " (select id from talk_entry where member_id = :member)",
          "delete from talk_revision where entry_id in"
              + " (select id from talk_entry where member_id = :member)",
          "delete from talk_entry where member_id = :member and question_id is not null",
          "delete from talk_entry where id in ALONE",
          "update talk_entry set title = 'A question by a former member', body = '(removed)',"
              + " machine_model = null, controller_version = null where member_id = :member",
          "update talk_entry q set answers = (select count(*) from talk_entry a"
              + " where a.question_id = q.id and a.state = 'LIVE') where kind = 'QUESTION'"
              + " and answers <> (select count(*) from talk_entry a"
              + " where a.question_id = q.id and a.state = 'LIVE')",
          "update talk_revision set reason = null where editor_id = :member and reason is not null",
          "delete from watch_hit where member_id = :member",
          "delete from watch where member_id = :member",
          "delete from watch_digest where member_id = :member");

  private final MemberRowsRepository rows;

  TalkData(MemberRowsRepository rows) {
    this.rows = rows;
  }

  @Override
  public int order() {
    return ORDER;
  }

  @Override
  public void write(UUID member, Parcel parcel) {
    parcel.rows("talk.json", rows.json(WITH_REVISIONS, member));
    parcel.rows(
        "watches.json",
        rows.json(
            "select id, label, query, mail, created_at from watch where member_id = :member"
                + " order by created_at",
            member));
    parcel.rows(
        "inbox.json",
        rows.json(
            "select entity, entry_id, found_at, read_at from watch_hit where member_id = :member"
                + " order by id",
            member));
  }

  @Override
  public void erase(UUID member, Choice choice) {
    rows.run(ERASING.stream().map(sql -> sql.replace("ALONE", ALONE)).toList(), member);
  }
}
