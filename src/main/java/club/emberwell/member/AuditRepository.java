package club.emberwell.member;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

@ApplicationScoped
class AuditRepository implements PanacheRepositoryBase<AuditEntry, Long> {}
