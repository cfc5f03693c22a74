package club.emberwell.member.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** The steps that were taken, each once. */
@ApplicationScoped
class FirstStepRepository {
  private final Session db;

  FirstStepRepository(Session db) {
    this.db = db;
  }

  void add(UUID member, FirstStep step) {
    db.createNativeMutationQuery(
            """
            insert into first_step (member_id, step) values (:member, :step)
            on conflict do nothing""")
        .setParameter("member", member)
        .setParameter("step", step.code())
        .executeUpdate();
  }

  List<String> of(UUID member) {
    return db.createNativeQuery(
            """
            select step from first_step where member_id = :member""",
            String.class)
        .setParameter("member", member)
        .getResultList();
  }

  /** What any owner of today did for the club. */
  List<String> ofOwners() {
    return db.createNativeQuery(
            """
            select distinct s.step from first_step s join member m on m.id = s.member_id
            where m.role = 'owner'""",
            String.class)
        .getResultList();
  }

  /** How many people are members or were invited to be, beside the first. */
  long others() {
    return db.createNativeQuery(
            """
            select (select count(*) from invitation)
              + greatest(0, (select count(*) from member m where m.status = 'active'
                  and not exists (select 1 from invented_member i where i.member_id = m.id)) - 1)""",
            Long.class)
        .getSingleResult();
  }
}
