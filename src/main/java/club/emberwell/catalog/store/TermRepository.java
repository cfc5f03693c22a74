package club.emberwell.catalog.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

@ApplicationScoped
class TermRepository implements PanacheRepositoryBase<TermEntity, String> {}
