package club.emberwell.lot.drift;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/**
 * Which reports name which lots: those of the same member that give the lot in the words its owner
 * noted, and name no other supplier. Case and space do not count, nor which of a supplier's
 * spellings is used.
 */
@ApplicationScoped
class LotReportRepository {
  private final Session db;

  LotReportRepository(Session db) {
    this.db = db;
  }

  /**
   * A lot that reports may name.
   *
   * @param blanks supplier, material, coating and colour as one text: what is compared
   * @param day it came or was written down, ISO 8601
   */
  record Named(UUID lot, UUID member, String supplier, String blanks, String day) {}

  /** A member's own, in their order. */
  List<Named> own(UUID member) {
    return db.createNativeQuery(
            """
            select l.id as lot, e.member_id as member,
              coalesce(s.head_code, l.supplier_code) as supplier,
              concat_ws(chr(10), coalesce(s.head_code, l.supplier_code), lower(btrim(l.material)),
                coalesce(lower(btrim(l.coating)), ''), coalesce(lower(btrim(l.colour)), ''))
                as blanks,
              to_char(coalesce(l.received_on, e.created_at at time zone 'UTC'), 'YYYY-MM-DD')
                as day
            from lot l join entry e on e.id = l.id
              left join supplier_spelling s on s.code = l.supplier_code
            where e.member_id = :member and e.state = 'live' and l.batch is not null
            order by day, e.number""",
            Named.class)
        .setParameter("member", member)
        .getResultList();
  }

  /** Those of a supplier that their owners share, in their order; of many the last received. */
  List<Named> shared(String supplier, int most) {
    return db.createNativeQuery(
            """
            select * from (
              select l.id as lot, e.member_id as member, cast(:supplier as text) as supplier,
                concat_ws(chr(10), cast(:supplier as text), lower(btrim(l.material)),
                  coalesce(lower(btrim(l.coating)), ''), coalesce(lower(btrim(l.colour)), ''))
                  as blanks,
                to_char(coalesce(l.received_on, e.created_at at time zone 'UTC'), 'YYYY-MM-DD')
                  as day
              from lot l join entry e on e.id = l.id
              where l.supplier_code in (
                  select cast(:supplier as text)
                  union all select s.code from supplier_spelling s where s.head_code = :supplier)
                and l.shared and e.state = 'live'
                and l.batch is not null
              order by day desc, e.number desc
              limit :most) newest
            order by day, lot""",
            Named.class)
        .setParameter("supplier", supplier)
        .setParameter("most", most)
        .getResultList();
  }

  /** A report that names a lot. */
  record Naming(UUID lot, UUID report) {}

  /** Live reports that name these; of two lots of one name the first that came. */
  List<Naming> reports(List<UUID> lots) {
    return lots.isEmpty()
        ? List.of()
        : db.createNativeQuery(
                """
                select distinct on (r.id) l.id as lot, r.id as report
                from lot l
                join entry e on e.id = l.id
                join report r
                  on lower(regexp_replace(btrim(r.lot), '\\s+', ' ', 'g')) = l.batch_key
                join entry p on p.id = r.id
                left join supplier_spelling ls on ls.code = l.supplier_code
                left join supplier_spelling rs on rs.code = supplier_code_of(r.supplier)
                where l.id in :lots and r.lot is not null and p.member_id = e.member_id
                  and p.state = 'live'
                  and (r.supplier is null
                    or coalesce(rs.head_code, supplier_code_of(r.supplier))
                      = coalesce(ls.head_code, l.supplier_code))
                order by r.id, l.received_on nulls last, e.number""",
                Naming.class)
            .setParameter("lots", lots)
            .getResultList();
  }
}
