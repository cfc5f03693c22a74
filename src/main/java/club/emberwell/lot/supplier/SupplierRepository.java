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

  /**
   * Suppliers of at least so many members.
   *
   * @param code of the only one wanted, or null
   */
  List<Sums> sums(String code, int fewest) {
    return db.createNativeQuery(
            """
            select l.supplier_code as code, mode() within group (order by l.supplier) as name,
              count(distinct e.member_id) as members, count(*) as lots, sum(l.usable) as usable,
              sum(l.received) as received,
              min(cast(l.usable as double precision) / l.received) as least,
              max(cast(l.usable as double precision) / l.received) as most
            from lot l join entry e on e.id = l.id
            where l.shared and l.usable is not null and e.state = 'live'
              and (cast(:code as text) is null or l.supplier_code = :code)
            group by l.supplier_code
            having count(distinct e.member_id) >= :fewest
            order by l.supplier_code""",
            Sums.class)
        .setParameter("code", code)
        .setParameter("fewest", fewest)
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
              and l.supplier_code = :code
            order by l.received_on desc nulls last, e.number desc""",
            LotRow.class)
        .setParameter("code", code)
        .setMaxResults(most)
        .getResultList();
  }
}
