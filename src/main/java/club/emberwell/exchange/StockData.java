package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * A member's samples with their tags, and lots. Nobody else ever saw them, so they go whatever is
 * chosen; a tag stays as a code that leads nowhere.
 */
@Priority(460)
@ApplicationScoped
class StockData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "samples.json",
            """
            select e.*, s.*, (select t.code from tag t where t.entry_id = e.id) as tag,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from sample s join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""),
        new Rows(
            "lots.json",
            """
            select e.*, l.*,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from lot l join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from entry_revision where entry_id in (
          select id from entry where kind in ('sample', 'lot') and member_id = :member);
        delete from entry where kind in ('sample', 'lot') and member_id = :member""";
  }
}
