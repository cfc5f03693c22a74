package club.emberwell.catalog.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

@ApplicationScoped
class MergeRepository implements PanacheRepositoryBase<MergeEntity, UUID> {}
