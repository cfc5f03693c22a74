package club.emberwell.member.session;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

@ApplicationScoped
class ApiTokenRepository implements PanacheRepositoryBase<ApiToken, UUID> {}
