package club.emberwell.catalog.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

@ApplicationScoped
class CautionRepository implements PanacheRepositoryBase<CautionEntity, String> {}
