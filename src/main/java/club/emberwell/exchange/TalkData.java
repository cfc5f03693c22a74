package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * A member's questions, answers, notices, comments and watches. Texts go whatever is chosen; a
 * question that others answered stays as an empty frame round their answers.
 */
@Priority(500)
@ApplicationScoped
class TalkData implements PersonalData {
  private static final String WITH_REVISIONS =
      """
      select e.*, t.*,
        (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
          where v.entry_id = e.id) as revisions
      from talk t join entry e using (id, kind)
      where e.member_id = :member
      order by e.number""";

  private static final String MINE =
      """
      (select id from entry
        where kind in ('question', 'answer', 'notice', 'comment') and member_id = :member)""";

  /** Own entries under which nobody else has written go, others lose their words. */
  private static final String ERASING =
      """
      delete from entry_revision where entry_id in MINE;
      delete from entry where id in MINE and parent_id is not null;
      delete from entry e where id in MINE and not exists (
        select 1 from entry a where a.parent_id = e.id and a.member_id <> :member);
      update talk set body = '(removed)', machine_model = null, controller_version = null
       where id in MINE;
      update entry set title = 'A question by a former member' where id in MINE;
      update talk q set answers = c.live
        from (
          select t.id, (
              select count(*) from entry a
                where a.parent_id = t.id and a.kind = 'answer' and a.state = 'live') as live
            from talk t where t.kind = 'question') c
       where c.id = q.id and q.answers <> c.live;
      delete from watch_hit where member_id = :member;
      delete from watch where member_id = :member;
      delete from watch_digest where member_id = :member""";

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows("talk.json", WITH_REVISIONS),
        new Rows(
            "watches.json",
            """
            select id, label, query, mail, created_at from watch
            where member_id = :member order by created_at"""),
        new Rows(
            "inbox.json",
            """
            select e.kind as entity, h.entry_id, h.found_at, h.read_at
            from watch_hit h join entry e on e.id = h.entry_id
            where h.member_id = :member
            order by h.id"""));
  }

  @Override
  public String erasing(Choice choice) {
    return ERASING.replace("MINE", MINE);
  }
}
