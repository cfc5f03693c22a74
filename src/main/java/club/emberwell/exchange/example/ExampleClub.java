package club.emberwell.exchange.example;

import club.emberwell.exchange.example.Example.Beside;
import club.emberwell.exchange.example.Example.Invented;
import club.emberwell.exchange.example.ExampleRepository.Row;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryForbidden;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What owners wish of the example, and where it stands. The work itself is {@link ExampleWork}. */
@ApplicationScoped
public class ExampleClub {
  private static final String SUBJECT = "club";
  private static final String ID = "example";

  private final ExampleRepository rows;
  private final ClubOptions club;
  private final Audit audit;

  ExampleClub(ExampleRepository rows, ClubOptions club, Audit audit) {
    this.rows = rows;
    this.club = club;
    this.audit = audit;
  }

  /** The example as it stands now. */
  @Transactional
  public Example get(Actor actor) {
    owns(actor);
    return rows.row()
        .map(
            row ->
                new Example(
                    Coded.of(ExampleState.class, row.state()).orElseThrow(),
                    row.done(),
                    row.total(),
                    rows.counts(),
                    rows.beside()))
        .orElseGet(
            () -> new Example(ExampleState.NONE, 0, 0, new Invented(0, 0, 0), new Beside(0, 0, 0)));
  }

  /**
   * Wants it here. Where it is, or is coming, nothing changes.
   *
   * @throws EntryForbidden while it is being removed, or where a real member has such a name
   */
  @Transactional
  public void load(Actor actor) {
    owns(actor);
    if (rows.row().map(Row::state).filter("removing"::equals).isPresent()) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "The example club is being removed. Try again in a minute.");
    }
    List<String> names = rows.inTheWay(MemberLimits.INVENTED);
    if (!names.isEmpty()) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE,
          "Names of invented members end in “"
              + MemberLimits.INVENTED
              + "”, and so does this member's: "
              + names.get(0)
              + ".");
    }
    if (rows.begin(UUID.randomUUID(), actor.memberId(), Instant.now())) {
      club.example(true);
      audit.record(actor, "load-example", SUBJECT, ID, "", Map.of());
    }
  }

  /** Wants it gone, also while it is still coming. Where there is none, nothing changes. */
  @Transactional
  public void remove(Actor actor) {
    owns(actor);
    if (rows.beginRemoval()) {
      audit.record(actor, "remove-example", SUBJECT, ID, "", Map.of());
    }
  }

  private static void owns(Actor actor) {
    if (!actor.role().atLeast(Role.OWNER)) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Only owners decide about the example.");
    }
  }
}
