package club.emberwell.member;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

@ApplicationScoped
public class MemberRepository implements PanacheRepositoryBase<Member, UUID> {
  public Optional<Member> byHandle(String handle) {
    return find("lower(handle) = ?1", handle.toLowerCase(Locale.ROOT)).firstResultOptional();
  }

  /** Whether a member has a name that looks like this one; the same name counts too. */
  public boolean looksTaken(String handle) {
    return getEntityManager()
        .unwrap(Session.class)
        .createNativeQuery(
            """
            select exists (select 1 from member
                            where looks = looks_like(:handle) and status <> 'erased')
            """,
            Boolean.class)
        .setParameter("handle", handle)
        .getSingleResult();
  }

  public boolean emailTaken(String email, UUID except) {
    String lower = email.toLowerCase(Locale.ROOT);
    return except == null
        ? count("lower(email) = ?1", lower) > 0
        : count("lower(email) = ?1 and id <> ?2", lower, except) > 0;
  }

  /** The owners who can act, kept from changing until the transaction is over. */
  public List<UUID> lockedOwners() {
    List<Member> owners =
        find("role = ?1 and status = ?2 order by number", Role.OWNER, MemberStatus.ACTIVE)
            .withLock(LockModeType.PESSIMISTIC_WRITE)
            .list();
    return owners.stream().map(member -> member.id).toList();
  }

  public boolean hasOwner() {
    return count("role = ?1 and status <> ?2", Role.OWNER, MemberStatus.ERASED) > 0;
  }

  public Optional<Member> byEmail(String email) {
    return find("lower(email) = ?1", email.toLowerCase(Locale.ROOT)).firstResultOptional();
  }

  /** Takes over what a statement past the entity has changed. */
  public void reread(Member member) {
    getEntityManager().refresh(member);
  }
}
