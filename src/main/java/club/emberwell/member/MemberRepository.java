package club.emberwell.member;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class MemberRepository implements PanacheRepositoryBase<Member, UUID> {
  Optional<Member> byHandle(String handle) {
    return find("lower(handle) = ?1", handle.toLowerCase(Locale.ROOT)).firstResultOptional();
  }

  boolean emailTaken(String email, UUID except) {
    String lower = email.toLowerCase(Locale.ROOT);
    return except == null
        ? count("lower(email) = ?1", lower) > 0
        : count("lower(email) = ?1 and id <> ?2", lower, except) > 0;
  }
}
