package club.emberwell.exchange;

import club.emberwell.entry.change.HistoryBegins;
import club.emberwell.exchange.ErasureLedger.Entry;
import club.emberwell.exchange.PersonalData.Choice;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The ledger's rows, and what of a member is needed to carry an entry out. */
@ApplicationScoped
class ErasureRepository {
  /**
   * Who is to be forgotten.
   *
   * @param email null where there is none
   */
  record Person(UUID id, String handle, String email, boolean onlyOwner) {}

  /** An entry as it is stored. */
  private record Row(UUID member, String choice, Instant at) {
    Entry entry() {
      return new Entry(member, Choice.valueOf(choice.toUpperCase(Locale.ROOT)), at);
    }
  }

  private final Session db;

  ErasureRepository(Session db) {
    this.db = db;
  }

  /** The member, kept from changing until the transaction is over; empty once erased. */
  Optional<Person> lock(UUID member) {
    db.createNativeQuery(
            """
            select id from member where role = 'owner' and status = 'active' for update
            """,
            UUID.class)
        .getResultList();
    return db.createNativeQuery(
            """
            select id, handle, email,
                   role = 'owner' and status = 'active' and not exists (
                     select 1 from member o
                      where o.role = 'owner' and o.status = 'active' and o.id <> m.id)
              from member m where id = :member and status <> 'erased' for update
            """,
            Person.class)
        .setParameter("member", member)
        .uniqueResultOptional();
  }

  /** Enters or renews an entry; its transaction may take names out of the log. */
  void enter(Entry entry) {
    db.createNativeMutationQuery(
            """
            insert into erasure (member_id, choice, at) values (:member, :choice, :at)
            on conflict (member_id) do update set xid = pg_current_xact_id()
            """)
        .setParameter("member", entry.member())
        .setParameter("choice", entry.choice().code())
        .setParameter("at", entry.at())
        .executeUpdate();
  }

  /** A transaction of another server must not open the histories under a number it shares. */
  void close(@Observes HistoryBegins begins) {
    db.createNativeMutationQuery("update erasure set xid = '0'").executeUpdate();
  }

  List<Entry> all() {
    return db.createNativeQuery(
            """
            select member_id, choice, at from erasure order by at, member_id
            """,
            Row.class)
        .getResultStream()
        .map(Row::entry)
        .toList();
  }

  /** Entries whose member is back, as after the restore of an older state. */
  List<Entry> undone() {
    return db.createNativeQuery(
            """
            select e.member_id, e.choice, e.at
              from erasure e join member m on m.id = e.member_id
             where m.status <> 'erased' order by e.at
            """,
            Row.class)
        .getResultStream()
        .map(Row::entry)
        .toList();
  }

  /** Accounts that were turned away at the door so long ago. */
  List<UUID> turnedAway(Instant before) {
    return db.createNativeQuery(
            """
            select r.member_id
              from join_request r join member m on m.id = r.member_id
             where r.accepted = false and r.decided_at < :before and m.status = 'waiting'
             limit 100
            """,
            UUID.class)
        .setParameter("before", before)
        .getResultList();
  }
}
