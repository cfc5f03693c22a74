package club.emberwell.desk.word;

import club.emberwell.bench.StoredJson;
import club.emberwell.catalog.CautionRule;
import club.emberwell.desk.SqlRepository;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of caution texts that wait, and of those that did. */
@ApplicationScoped
public class CautionProposalRepository extends SqlRepository {
  private static final String SELECT =
      "select p.id as id, p.base_version as base, cast(p.rule as text) as rule, p.why as why,"
          + " p.member_id as member,"
          + " case when m.status = 'erased' then 'former member' else m.handle end as said_by,"
          + " p.created_at as created_at, p.state as state, p.outcome as outcome"
          + " from desk_caution_proposal p join member m on m.id = p.member_id ";

  CautionProposalRepository(Session db) {
    super(db);
  }

  void add(UUID id, int base, CautionRule rule, String why, UUID member, Instant now) {
    write(
        "insert into desk_caution_proposal"
            + " (id, caution_id, base_version, rule, why, member_id, created_at, state)"
            + " values (:id, :caution, :base, cast(:rule as jsonb), :why, :member, :now,"
            + " 'waiting')",
        "id",
        id,
        "caution",
        rule.id(),
        "base",
        base,
        "rule",
        StoredJson.write(rule),
        "why",
        why,
        "member",
        member,
        "now",
        now);
  }

  Optional<CautionProposal> find(UUID id) {
    return rows(SELECT + "where p.id = :id", "id", id).stream()
        .findFirst()
        .map(CautionProposalRepository::proposal);
  }

  /** Oldest first. */
  public List<CautionProposal> waiting(int from, int most) {
    return rows(
            SELECT
                + "where p.state = 'waiting' order by p.created_at, p.id offset :skip limit :most",
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(CautionProposalRepository::proposal)
        .toList();
  }

  /** A member's own, newest first. */
  List<CautionProposal> of(UUID member, int from, int most) {
    return rows(
            SELECT
                + "where p.member_id = :member order by p.created_at desc, p.id"
                + " offset :skip limit :most",
            "member",
            member,
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(CautionProposalRepository::proposal)
        .toList();
  }

  long waitingOf(UUID member) {
    return number(
        "select count(*) as n from desk_caution_proposal"
            + " where member_id = :member and state = 'waiting'",
        "member",
        member);
  }

  /** False where it does not wait any more. */
  boolean decide(UUID id, String state, UUID by, String outcome, Instant now) {
    return write(
            "update desk_caution_proposal set state = :state, decided_by = :by,"
                + " decided_at = :now, outcome = :outcome where id = :id and state = 'waiting'",
            "state",
            state,
            "by",
            by,
            "now",
            now,
            "outcome",
            outcome,
            "id",
            id)
        > 0;
  }

  private static CautionProposal proposal(Row row) {
    return new CautionProposal(
        row.uuid("id"),
        (int) row.number("base"),
        StoredJson.read(row.text("rule"), new TypeReference<CautionRule>() {}),
        row.text("why"),
        row.uuid("member"),
        row.text("said_by"),
        row.time("created_at"),
        row.text("state"),
        row.text("outcome"));
  }
}
