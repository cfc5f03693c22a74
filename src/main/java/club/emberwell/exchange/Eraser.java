package club.emberwell.exchange;

import club.emberwell.exchange.ErasureLedger.Entry;
import club.emberwell.exchange.ErasureRepository.Person;
import club.emberwell.exchange.PersonalData.Choice;
import club.emberwell.member.Actor;
import club.emberwell.member.session.Proof;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import io.quarkus.arc.All;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Forgets people: at once, wholly, in one transaction. */
@ApplicationScoped
public class Eraser {
  private static final String LAST_OWNER =
      "You are the only owner of the club. Make somebody else an owner first.";

  private final List<PersonalData> features;
  private final ErasureRepository rows;
  private final MemberRowsRepository data;
  private final NameSweep names;
  private final Proof proof;
  private final PersonalDataLimits limits;

  Eraser(
      @All List<PersonalData> features,
      ErasureRepository rows,
      MemberRowsRepository data,
      NameSweep names,
      Proof proof,
      PersonalDataLimits limits) {
    this.features = features;
    this.rows = rows;
    this.data = data;
    this.names = names;
    this.proof = proof;
    this.limits = limits;
  }

  /**
   * Forgets the member who asks.
   *
   * @param session the session of the request, where no password can prove the member
   * @param choice keep or remove: what becomes of measurements
   */
  public Choice erase(
      Actor actor, UUID session, String choice, String password, String addressPrefix) {
    Choice wanted =
        Arrays.stream(Choice.values())
            .filter(c -> c.code().equals(choice))
            .findFirst()
            .orElseThrow(() -> new EntryRefused(undecided()));
    proof.of(actor, session, password, addressPrefix);
    QuarkusTransaction.requiringNew()
        .timeout(limits.erasureSeconds())
        .run(() -> forgetAsking(actor.memberId(), wanted));
    return wanted;
  }

  private static Remark undecided() {
    return Remark.error(
        RemarkId.CHOICE_MISSING, "/choice", "Choose whether your results stay or are deleted.");
  }

  private void forgetAsking(UUID member, Choice choice) {
    Optional<Person> person = rows.lock(member);
    if (person.filter(Person::onlyOwner).isPresent()) {
      throw new EntryForbidden(EntryForbidden.Why.STATE, LAST_OWNER);
    }
    person.ifPresent(p -> forget(p, new Entry(member, choice, Instant.now())));
  }

  /** Carries an entry of the ledger out; false where the member is gone already. */
  boolean carryOut(Entry entry) {
    return QuarkusTransaction.requiringNew()
        .timeout(limits.erasureSeconds())
        .call(
            () -> {
              Optional<Person> person = rows.lock(entry.member());
              person.ifPresent(p -> forget(p, entry));
              return person.isPresent();
            });
  }

  /**
   * Takes somebody away whom no person stands behind, with all measurements. Their name is
   * nobody's, so it is not looked for in what others wrote.
   */
  public void forgetInvented(UUID member) {
    Entry entry = new Entry(member, Choice.REMOVE, Instant.now());
    QuarkusTransaction.requiringNew()
        .timeout(limits.erasureSeconds())
        .run(() -> rows.lock(member).ifPresent(person -> forgetRows(person, entry)));
  }

  private void forgetRows(Person person, Entry entry) {
    rows.enter(entry);
    features.forEach(feature -> feature.erase(person.id(), entry.choice(), data));
  }

  private void forget(Person person, Entry entry) {
    forgetRows(person, entry);
    names.sweep(person.handle(), person.email());
  }

  /** Those who were turned away at the door are forgotten after a while. */
  @Scheduled(every = "6h", delayed = "9m")
  void forgetTurnedAway() {
    Instant now = Instant.now();
    List<UUID> old =
        QuarkusTransaction.requiringNew()
            .call(() -> rows.turnedAway(now.minus(limits.turnedAwayKept())));
    old.forEach(member -> carryOut(new Entry(member, Choice.REMOVE, now)));
  }
}
