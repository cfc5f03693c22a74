package club.emberwell.exchange;

import club.emberwell.exchange.MemberDownload.Zip;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** A member's test grids. Nobody else ever saw them, so they go whatever is chosen. */
@Priority(450)
@ApplicationScoped
class GridData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "grids.json",
            """
            select e.*, g.*, (select t.code from tag t where t.entry_id = e.id) as tag,
              (select v.written from entry_revision v
                where v.entry_id = g.report_id and v.written is not null
                order by v.version desc limit 1) as results,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from grid g join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""),
        new Rows(
            "grid-photos.json",
            """
            select p.grid_id, p.width, p.height, p.size_bytes, p.corners, p.shown_id, p.taken_at
            from grid_photo p join entry e on e.id = p.grid_id
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public void addFiles(UUID member, MemberRowsRepository rows, Zip zip) {
    for (UUID grid :
        rows.ids(
            """
            select grid_id from grid_photo p join entry e on e.id = p.grid_id
            where e.member_id = :member
            order by e.number""",
            member)) {
      zip.file("grid-photos/%s.jpg".formatted(grid), rows.gridPicture(grid));
    }
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from entry_revision where entry_id in (
          select id from entry where kind = 'grid' and member_id = :member);
        delete from entry where kind = 'grid' and member_id = :member""";
  }
}
