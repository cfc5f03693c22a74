package club.emberwell.desk.supplier;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of spellings that were joined. */
@ApplicationScoped
class SupplierSpellingRepository {
  private final Session db;

  SupplierSpellingRepository(Session db) {
    this.db = db;
  }

  /** Nobody else joins or parts names until the transaction ends: else two could make a circle. */
  void lock() {
    db.createNativeMutationQuery("lock table supplier_spelling in share row exclusive mode")
        .executeUpdate();
  }

  /** The code of a name by itself, joined or not. */
  String code(String name) {
    return db.createNativeQuery("select supplier_code_of(:name)", String.class)
        .setParameter("name", name)
        .getSingleResult();
  }

  Optional<SupplierSpelling> find(String code) {
    return db.createNativeQuery(
            """
            select s.code, s.spelling, s.head as supplier, s.head_code as supplierCode,
              (select m.handle from member m where m.id = s.member_id) as by, s.at, s.reason,
              s.number
            from supplier_spelling s
            where s.code = :code""",
            SupplierSpelling.class)
        .setParameter("code", code)
        .uniqueResultOptional();
  }

  /** Those before a number, the last joined first. */
  List<SupplierSpelling> before(long number, int from, int most) {
    return db.createNativeQuery(
            """
            select s.code, s.spelling, s.head as supplier, s.head_code as supplierCode,
              (select m.handle from member m where m.id = s.member_id) as by, s.at, s.reason,
              s.number
            from supplier_spelling s
            where s.number < :number
            order by s.number desc""",
            SupplierSpelling.class)
        .setParameter("number", number)
        .setFirstResult(from)
        .setMaxResults(most)
        .getResultList();
  }

  /** The name under which others are joined to this code; empty where none is. */
  Optional<String> nameOfHead(String code) {
    return db.createNativeQuery(
            "select s.head from supplier_spelling s where s.head_code = :code order by s.number",
            String.class)
        .setParameter("code", code)
        .setMaxResults(1)
        .uniqueResultOptional();
  }

  void add(String code, String spelling, String headCode, String head, UUID by, String reason) {
    db.createNativeMutationQuery(
            """
            insert into supplier_spelling (code, spelling, head_code, head, member_id, at, reason)
            values (:code, :spelling, :headCode, :head, :by, now(), :reason)""")
        .setParameter("code", code)
        .setParameter("spelling", spelling)
        .setParameter("headCode", headCode)
        .setParameter("head", head)
        .setParameter("by", by)
        .setParameter("reason", reason)
        .executeUpdate();
  }

  void remove(String code) {
    db.createNativeMutationQuery("delete from supplier_spelling where code = :code")
        .setParameter("code", code)
        .executeUpdate();
  }
}
