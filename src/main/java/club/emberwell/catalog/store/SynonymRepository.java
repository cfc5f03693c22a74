package club.emberwell.catalog.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class SynonymRepository implements PanacheRepositoryBase<SynonymEntity, UUID> {
  List<SynonymEntity> of(String termId) {
    return list("termId = ?1 order by text", termId);
  }

  List<String> texts(String termId) {
    return of(termId).stream().filter(s -> !s.removed).map(s -> s.text).toList();
  }

  Optional<SynonymEntity> find(String termId, String text) {
    return find("termId = ?1 and text = ?2", termId, text).firstResultOptional();
  }
}
