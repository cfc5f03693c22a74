package club.emberwell.desk.word;

import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** Rows of caution texts that wait, and of those that did. */
@ApplicationScoped
public class CautionProposalRepository
    implements PanacheRepositoryBase<CautionProposalEntity, UUID> {
  /** A proposal p beside the name of its author. */
  private static final String NAMED =
      """
      select p, m.handle
      from CautionProposalEntity p join Member m on m.id = p.memberId
      """;

  private final Session db;

  CautionProposalRepository(Session db) {
    this.db = db;
  }

  private record Named(CautionProposalEntity proposal, String by) {}

  /** Held until the transaction ends. */
  Optional<CautionProposalEntity> locked(UUID id) {
    return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE);
  }

  Optional<CautionProposal> named(UUID id) {
    return proposals(query("where p.id = :id").setParameter("id", id)).stream().findFirst();
  }

  /** Oldest first. */
  public List<CautionProposal> waiting(Place place) {
    return proposals(
        query(
                """
                where p.state = 'waiting' and (p.createdAt, p.id) > (:at, :id)
                order by p.createdAt, p.id""")
            .setParameter("at", place.time(0))
            .setParameter("id", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** A member's own, newest first. */
  List<CautionProposal> of(UUID member, Place place) {
    return proposals(
        query(
                """
                where p.memberId = :member and (p.createdAt, p.id) < (:at, :id)
                order by p.createdAt desc, p.id desc""")
            .setParameter("member", member)
            .setParameter("at", place.time(0))
            .setParameter("id", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  long waitingOf(UUID member) {
    return count("memberId = ?1 and state = 'waiting'", member);
  }

  private SelectionQuery<Named> query(String which) {
    return db.createSelectionQuery(NAMED.concat(which), Named.class);
  }

  private static List<CautionProposal> proposals(SelectionQuery<Named> query) {
    return query.getResultStream().map(row -> row.proposal.toProposal(row.by)).toList();
  }
}
