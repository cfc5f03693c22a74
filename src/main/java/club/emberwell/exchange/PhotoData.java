package club.emberwell.exchange;

import club.emberwell.exchange.MemberDownload.Zip;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** A member's photos, also of forms that were never posted. They go whatever is chosen. */
@Priority(600)
@ApplicationScoped
class PhotoData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "photos.json",
            """
            select e.id, o.kind as of_kind, o.id as of_id, p.caption, p.alt, p.place, p.width,
              p.height, p.size_bytes, e.state, e.created_at,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from photo p join entry e using (id) join entry o on o.id = e.parent_id
            where e.member_id = :member
            order by e.number"""),
        new Rows(
            "chosen-photos.json",
            """
            select id, form_id, caption, alt, width, height, size_bytes, parked_at
            from parked_photo
            where member_id = :member
            order by parked_at"""));
  }

  @Override
  public void addFiles(UUID member, MemberRowsRepository rows, Zip zip) {
    for (UUID photo :
        rows.ids(
            "select id from photo join entry using (id) where member_id = :member order by number",
            member)) {
      zip.file("photos/%s.jpg".formatted(photo), rows.picture(photo));
    }
    for (UUID photo : rows.ids("select id from parked_photo where member_id = :member", member)) {
      zip.file("chosen-photos/%s.jpg".formatted(photo), rows.parkedPicture(photo));
    }
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from entry_revision where entry_id in (
          select id from entry where kind = 'photo' and member_id = :member);
        delete from entry where kind = 'photo' and member_id = :member;
        delete from parked_photo where member_id = :member""";
  }
}
