package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Set;

/** Remembers which first steps people took. */
@ApplicationScoped
public class FirstSteps {
  private final FirstStepRepository rows;

  FirstSteps(FirstStepRepository rows) {
    this.rows = rows;
  }

  /** The member took it; again changes nothing. A stranger's step is not kept. */
  @Transactional
  public void took(Actor actor, FirstStep step) {
    if (actor.signedIn()) {
      rows.add(actor.memberId(), step);
    }
  }

  @Transactional
  public Set<FirstStep> of(Actor actor) {
    return read(rows.of(actor.memberId()));
  }

  /** What any owner did for the club. */
  @Transactional
  public Set<FirstStep> ofOwners() {
    return read(rows.ofOwners());
  }

  /** Whether somebody else is a member, or was ever invited. */
  @Transactional
  public boolean anybodyElse() {
    return rows.others() > 0;
  }

  private static Set<FirstStep> read(Collection<String> codes) {
    Set<FirstStep> steps = EnumSet.noneOf(FirstStep.class);
    codes.forEach(code -> Coded.of(FirstStep.class, code).ifPresent(steps::add));
    return steps;
  }
}
