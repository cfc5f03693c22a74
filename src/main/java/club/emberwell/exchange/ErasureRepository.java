package club.emberwell.exchange;

import club.emberwell.exchange.ErasureLedger.Entry;
import club.emberwell.member.PersonalData.Choice;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/** The ledger's rows, and what of a member is needed to carry an entry out. */
@ApplicationScoped
class ErasureRepository {
  /**
   * Who is to be forgotten.
   *
   * @param email null where there is none
   */
  record Person(UUID id, String handle, String email, boolean onlyOwner) {}

  private final EntityManager db;

  ErasureRepository(EntityManager db) {
    this.db = db;
  }

  /** The member, kept from changing until the transaction is over; empty once erased. */
  Optional<Person> lock(UUID member) {
    db.createNativeQuery(
            "select id from member where role = 'owner' and status = 'active' for update",
            UUID.class)
        .getResultList();
    List<?> rows =
        db.createNativeQuery(
                "select handle, email, role = 'owner' and status = 'active' and not exists (select 1"
                    + " from member o where o.role = 'owner' and o.status = 'active'"
                    + " and o.id <> m.id) from member m where id = :member and status <> 'erased'"
                    + " for update",
                Tuple.class)
            .setParameter("member", member)
            .getResultList();
    return rows.stream()
        .map(Tuple.class::cast)
        .findFirst()
        .map(
            row ->
                new Person(member, (String) row.get(0), (String) row.get(1), (Boolean) row.get(2)));
  }

  /** Enters or renews an entry; its transaction may take names out of the log. */
  void enter(Entry entry) {
    db.createNativeQuery(
            "insert into erasure (member_id, choice, at) values (:member, :choice, :at)"
                + " on conflict (member_id) do update set xid = pg_current_xact_id()")
        .setParameter("member", entry.member())
        .setParameter("choice", entry.choice().code())
        .setParameter("at", entry.at())
        .executeUpdate();
  }

  List<Entry> all() {
    return entries("select member_id, choice, at from erasure order by at, member_id");
  }

  /** Entries whose member is back, as after the restore of an older state. */
  List<Entry> undone() {
    return entries(
        "select e.member_id, e.choice, e.at from erasure e join member m on m.id = e.member_id"
            + " where m.status <> 'erased' order by e.at");
  }

  /** Accounts that were turned away at the door so long ago. */
  List<UUID> turnedAway(Instant before) {
    List<?> rows =
        db.createNativeQuery(
                "select r.member_id from join_request r join member m on m.id = r.member_id"
                    + " where r.accepted = false and r.decided_at < :before"
                    + " and m.status = 'waiting' limit 100",
                UUID.class)
            .setParameter("before", before)
            .getResultList();
    return rows.stream().map(UUID.class::cast).toList();
  }

  private List<Entry> entries(String select) {
    List<?> rows = db.createNativeQuery(select, Tuple.class).getResultList();
    return rows.stream()
        .map(Tuple.class::cast)
        .map(
            row ->
                new Entry(
                    row.get(0, UUID.class),
                    Choice.valueOf(row.get(1, String.class).toUpperCase(Locale.ROOT)),
                    row.get(2, Instant.class)))
        .toList();
  }
}
