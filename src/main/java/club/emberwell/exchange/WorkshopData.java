package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** A member's glasses and rooms. Nobody else ever saw them, so they go whatever is chosen. */
@Priority(470)
@ApplicationScoped
class WorkshopData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "eyewear.json",
            """
            select e.*, g.*,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from eyewear g join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""),
        new Rows(
            "rooms.json",
            """
            select e.*, r.*,
              (select jsonb_agg(to_jsonb(c) - 'room_id' order by c.code) from room_check c
                where c.room_id = r.id) as checks,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from room r join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from entry_revision where entry_id in (
          select id from entry where kind in ('eyewear', 'room') and member_id = :member);
        delete from entry where kind in ('eyewear', 'room') and member_id = :member""";
  }
}
