package club.emberwell.exchange.example;

import club.emberwell.exchange.example.Example.Beside;
import club.emberwell.exchange.example.Example.Invented;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The row of the example, and whom nobody stands behind. */
@ApplicationScoped
class ExampleRepository {
  private final Session db;

  ExampleRepository(Session db) {
    this.db = db;
  }

  /** The row as it is stored. */
  record Row(UUID run, String state, int done, int total) {}

  Optional<Row> row() {
    return db.createNativeQuery(
            """
            select run, state, done, total from example_club""",
            Row.class)
        .uniqueResultOptional();
  }

  /** Begins one; false where there is one already. */
  boolean begin(UUID run, UUID owner, Instant now) {
    return db.createNativeMutationQuery(
                """
                insert into example_club (run, state, done, total, member_id, asked_at, leased_until)
                values (:run, 'loading', 0, 0, :owner, :now, :now) on conflict do nothing""")
            .setParameter("run", run)
            .setParameter("owner", owner)
            .setParameter("now", now)
            .executeUpdate()
        == 1;
  }

  /** Wants it gone, whether it is whole or still coming; false where there is none to remove. */
  boolean beginRemoval() {
    return db.createNativeMutationQuery(
                """
                update example_club set state = 'removing', done = 0,
                  total = (select count(*) from invented_member)
                where state <> 'removing'""")
            .executeUpdate()
        == 1;
  }

  /** Takes the turn to work at it; empty where nothing is to be done or another node does it. */
  Optional<Row> claim(Instant now, Duration turn) {
    int taken =
        db.createNativeMutationQuery(
                """
                update example_club set leased_until = :until
                where state in ('loading', 'removing') and leased_until <= :now""")
            .setParameter("until", now.plus(turn))
            .setParameter("now", now)
            .executeUpdate();
    return taken == 0 ? Optional.empty() : row();
  }

  void release() {
    db.createNativeMutationQuery(
            """
            update example_club set leased_until = asked_at""")
        .executeUpdate();
  }

  /** Notes how far it is and keeps the turn; false where it is to be something else by now. */
  boolean advance(Row row, int done, int total, Instant until) {
    return db.createNativeMutationQuery(
                """
                update example_club set done = :done, total = :total, leased_until = :until
                where run = :run and state = :state""")
            .setParameter("done", done)
            .setParameter("total", total)
            .setParameter("until", until)
            .setParameter("run", row.run())
            .setParameter("state", row.state())
            .executeUpdate()
        == 1;
  }

  /** All of it is here; false where it is to go by now. */
  boolean complete(Row row) {
    return db.createNativeMutationQuery(
                """
                update example_club set state = 'there', done = total
                where run = :run and state = 'loading'""")
            .setParameter("run", row.run())
            .executeUpdate()
        == 1;
  }

  void delete(Row row) {
    db.createNativeMutationQuery(
            """
            delete from example_club where run = :run""")
        .setParameter("run", row.run())
        .executeUpdate();
  }

  void invent(UUID member) {
    db.createNativeMutationQuery(
            """
            insert into invented_member (member_id) values (:member) on conflict do nothing""")
        .setParameter("member", member)
        .executeUpdate();
  }

  List<UUID> invented() {
    return db.createNativeQuery(
            """
            select member_id from invented_member order by member_id""",
            UUID.class)
        .getResultList();
  }

  /** Real members who have a name that the example would give. */
  List<String> inTheWay(String ending) {
    return db.createNativeQuery(
            """
            select handle from member m
            where status <> 'erased' and lower(handle) like '%' || :ending
              and not exists (select 1 from invented_member i where i.member_id = m.id)
            order by handle""",
            String.class)
        .setParameter("ending", ending)
        .getResultList();
  }

  Invented counts() {
    return db.createNativeQuery(
            """
            select (select count(*) from invented_member),
              count(*) filter (where e.kind = 'report'),
              count(*) filter (where e.kind in ('question', 'answer', 'notice'))
            from entry e join invented_member i using (member_id)
            where e.state = 'live'""",
            Invented.class)
        .getSingleResult();
  }

  /** What real members hung on something invented. */
  Beside beside() {
    return db.createNativeQuery(
            """
            select count(*) filter (where e.kind = 'answer'),
              (select count(*)
                 from report r join entry mine on mine.id = r.id
                 join entry theirs on theirs.id = r.repeat_of
                where theirs.member_id in (select member_id from invented_member)
                  and mine.member_id not in (select member_id from invented_member)),
              count(*) filter (where e.kind = 'comment')
            from entry e join entry above on above.id = e.parent_id
            where above.member_id in (select member_id from invented_member)
              and e.member_id not in (select member_id from invented_member)""",
            Beside.class)
        .getSingleResult();
  }
}
