package club.emberwell.entry.own;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import java.util.Optional;
import java.util.UUID;

/** The rows of a kind. */
public interface OwnRows<E extends OwnRow<?, ?>> extends PanacheRepositoryBase<E, UUID> {
  /** A row with its entry; one statement. */
  Optional<E> whole(UUID id);

  /** How many a member has, those that were taken off the list too. */
  default long countOf(UUID member) {
    return count("entry.memberId = ?1", member);
  }
}
