package club.emberwell.lot.supplier;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** Reads lots that their owners share, with all members' together. */
@ApplicationScoped
class SupplierRepository {
  private final Session db;

  SupplierRepository(Session db) {
    this.db = db;
  }

  record Sums(
      String code,
      String name,
      Long members,
      Long lots,
      Long usable,
      Long received,
      Double least,
      Double most) {}

  /** The code of the supplier whose spelling a name is. */
  String code(String name) {
    return db.createNativeQuery(
            """
                select coalesce(
                  (select s.head_code from supplier_spelling s
                    where s.code = supplier_code_of(:name)),
                  supplier_code_of(:name))""",
            String.class)
        .setParameter("name", name)
        .getSingleResult();
  }

  /**
   * The code of the supplier that a spelling of this code is joined to; the code itself if none.
   */
  String head(String code) {
    return db.createNativeQuery(
            """
                select coalesce(
                  (select s.head_code from supplier_spelling s where s.code = :code), :code)""",
            String.class)
        .setParameter("code", code)
        .getSingleResult();
  }

  /**
   * Suppliers of at least so many members. One statement over all shared lots, whatever is wanted
   * of the list: a rank is known only beside all others.
   *
   * @param code of the only one wanted, or null
   * @param part of a name, whatever its case; null for any
   */
  List<Sums> sums(String code, String part, int fewest) {
    return db.createNativeQuery(
            """
            select coalesce(s.head_code, l.supplier_code) as code,
              coalesce(mode() within group (order by l.supplier) filter (where s.code is null),
                max(s.head)) as name,
              count(distinct e.member_id) as members, count(*) as lots, sum(l.usable) as usable,
              sum(l.received) as received,
              min(cast(l.usable as double precision) / l.received) as least,
              max(cast(l.usable as double precision) / l.received) as most
            from lot l join entry e on e.id = l.id
              left join supplier_spelling s on s.code = l.supplier_code
            where l.shared and l.usable is not null and e.state = 'live'
              and (cast(:code as text) is null
                or coalesce(s.head_code, l.supplier_code) = :code)
            group by 1
            having count(distinct e.member_id) >= :fewest
              and (cast(:part as text) is null
                or bool_or(position(supplier_folded(:part) in l.supplier_key) > 0)
                or position(supplier_folded(:part) in supplier_folded(max(s.head))) > 0)
            order by 1""",
            Sums.class)
        .setParameter("code", code, String.class)
        .setParameter("part", part, String.class)
        .setParameter("fewest", fewest)
        .getResultList();
  }

  /** Names that count as the one of this code, in the order of the alphabet. */
  List<String> spellings(String code) {
    return db.createNativeQuery(
            """
            select s.spelling from supplier_spelling s where s.head_code = :code
            order by supplier_folded(s.spelling)""",
            String.class)
        .setParameter("code", code)
        .getResultList();
  }

  record LotRow(
      UUID member,
      String month,
      String material,
      String coating,
      String colour,
      Integer usable,
      Integer received) {}

  /** Shared lots of a supplier that were inspected, the last received first. */
  List<LotRow> lots(String code, int most) {
    return db.createNativeQuery(
            """
            select e.member_id as member, to_char(l.received_on, 'YYYY-MM') as month,
              l.material as material, l.coating as coating, l.colour as colour,
              l.usable as usable, l.received as received
            from lot l join entry e on e.id = l.id
            where l.shared and l.usable is not null and e.state = 'live'
              and l.supplier_code in (
                select cast(:code as text)
                union all select s.code from supplier_spelling s where s.head_code = :code)
            order by l.received_on desc nulls last, e.number desc""",
            LotRow.class)
        .setParameter("code", code)
        .setMaxResults(most)
        .getResultList();
  }
}
