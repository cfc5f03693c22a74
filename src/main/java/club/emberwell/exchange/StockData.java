package club.emberwell.exchange;

import club.emberwell.exchange.MemberDownload.Zip;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/**
 * A member's samples with their tags, lots and fixtures with their photos. Nobody else ever saw
 * them, so they go whatever is chosen; a tag stays as a code that leads nowhere. What a shared lot
 * counted for its supplier counts no more.
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
            order by e.number"""),
        new Rows(
            "fixtures.json",
            """
            select e.*, f.*,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from fixture f join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""),
        new Rows(
            "kept-photos.json",
            """
            select p.entry_id, e.kind, p.width, p.height, p.size_bytes, p.taken_at
            from kept_photo p join entry e on e.id = p.entry_id
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public void addFiles(UUID member, MemberRowsRepository rows, Zip zip) {
    for (UUID entry :
        rows.ids(
            """
            select entry_id from kept_photo p join entry e on e.id = p.entry_id
            where e.member_id = :member
            order by e.number""",
            member)) {
      zip.file("kept-photos/%s.jpg".formatted(entry), rows.keptPicture(entry));
    }
  }

  @Override
  public String erasing(Choice choice) {
    return """
    delete from entry_revision where entry_id in (
      select id from entry where kind in ('sample', 'lot', 'fixture') and member_id = :member);
    delete from entry where kind in ('sample', 'lot', 'fixture') and member_id = :member""";
  }
}
