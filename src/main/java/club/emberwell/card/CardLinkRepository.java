package club.emberwell.card;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of links to cards. */
@ApplicationScoped
class CardLinkRepository implements PanacheRepositoryBase<CardLinkEntity, UUID> {
  private final Session db;

  CardLinkRepository(Session db) {
    this.db = db;
  }

  /**
   * A link that was found by its secret.
   *
   * @param works whether neither the link was ended nor its recipe withdrawn
   */
  record Found(CardLinkEntity link, UUID owner, boolean works) {}

  Optional<Found> bySecret(byte[] hash) {
    return db.createSelectionQuery(
            """
            select l, e.memberId, l.endedAt is null and e.state = EntryState.LIVE
            from CardLinkEntity l join EntryEntity e on e.id = l.recipe
            where l.secretHash = :hash\
            """,
            Found.class)
        .setParameter("hash", hash)
        .uniqueResultOptional();
  }

  /** The newest first. */
  List<CardLinkEntity> of(UUID recipe, int most) {
    return find("recipe = ?1 order by createdAt desc, id", recipe).page(0, most).list();
  }

  long working(UUID recipe) {
    return count("recipe = ?1 and endedAt is null", recipe);
  }

  Optional<CardLinkEntity> one(UUID recipe, UUID id) {
    return find("recipe = ?1 and id = ?2", recipe, id).firstResultOptional();
  }
}
