package club.emberwell.member.session;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** The rows behind {@link SignIns}. */
@ApplicationScoped
class SignInRepository {
  /** As stored. */
  record Row(Instant at, String event, String network, String label) {}

  private final Session db;

  SignInRepository(Session db) {
    this.db = db;
  }

  void add(UUID member, SignInEvent event, String network, String label) {
    db.createNativeMutationQuery(
            """
            insert into sign_in (member_id, event, network, label)
            values (:member, :event, :network, :label)
            """)
        .setParameter("member", member)
        .setParameter("event", event.code())
        .setParameter("network", network)
        .setParameter("label", label)
        .executeUpdate();
  }

  /** Newest first. */
  List<Row> of(UUID member, int most) {
    return db.createNativeQuery(
            """
            select at, event, network, label from sign_in
             where member_id = :member order by id desc limit :most
            """,
            Row.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getResultList();
  }

  /** Notes a network of a token; false where it is known. */
  boolean addNetwork(UUID token, String network) {
    return db.createNativeMutationQuery(
                """
                insert into token_network (token_id, network) values (:token, :network)
                on conflict do nothing
                """)
            .setParameter("token", token)
            .setParameter("network", network)
            .executeUpdate()
        == 1;
  }

  void forgetBefore(Instant before) {
    db.createNativeMutationQuery(
            """
            delete from sign_in where at < :before
            """)
        .setParameter("before", before)
        .executeUpdate();
  }
}
