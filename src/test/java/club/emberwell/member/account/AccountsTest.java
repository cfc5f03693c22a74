package club.emberwell.member.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.member.Audit;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.Secrets;
import club.emberwell.member.door.Doors;
import club.emberwell.member.door.NewMember;
import club.emberwell.member.pace.Idempotency;
import club.emberwell.member.pace.Idempotency.Answer;
import club.emberwell.member.pace.Idempotency.Answered;
import club.emberwell.member.pace.Pace;
import club.emberwell.member.pace.Throttle;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.SignedIn;
import club.emberwell.member.session.Tokens;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.TurnedDown;
import club.emberwell.remark.Unproven;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

@QuarkusTest
class AccountsTest {
  private static final String PASSWORD = "nine grey herons wait";
  private static final AtomicInteger COUNT = new AtomicInteger();

  @Inject Accounts accounts;
  @Inject Doors doors;
  @Inject NewPasswords passwords;
  @Inject Sessions sessions;
  @Inject Tokens tokens;
  @Inject Members members;
  @Inject Audit audit;
  @Inject Idempotency idempotency;
  @Inject Throttle throttle;
  @Inject MeterRegistry meters;
  @Inject EntityManager db;

  private MemberView join() {
    String handle = "s" + Long.toString(System.nanoTime(), 36) + COUNT.incrementAndGet();
    return doors.enrol(new NewMember(handle, null, PASSWORD), Role.MEMBER);
  }

  private SignedIn signIn(MemberView member) {
    return sessions.signIn(member.handle(), PASSWORD, "test", address());
  }

  private static String address() {
    return "test-" + COUNT.incrementAndGet();
  }

  @Test
  void aSessionIsOverAfterSigningOut() {
    SignedIn session = signIn(join());
    assertTrue(sessions.find(session.secret()).isPresent());
    sessions.end(session.secret());
    assertTrue(sessions.find(session.secret()).isEmpty());
  }

  @Test
  void aNewPasswordEndsEverySessionAndBeginsOneInTheBrowserThatChangedIt() {
    MemberView member = join();
    SignedIn here = signIn(member);
    SignedIn elsewhere = signIn(member);
    UUID id = sessions.find(here.secret()).orElseThrow().credential();
    NewPasswords.Wish wish = new NewPasswords.Wish(PASSWORD, "ten grey herons left", false);
    SignedIn next = passwords.change(member.actor(), wish, id, address()).orElseThrow();
    assertTrue(sessions.find(next.secret()).isPresent());
    assertTrue(sessions.find(here.secret()).isEmpty());
    assertTrue(sessions.find(elsewhere.secret()).isEmpty());
  }

  @Test
  void aBanEndsSessionsAndTokensAndIsWrittenDownWithItsReason() {
    MemberView member = join();
    MemberView moderator = join();
    SignedIn session = signIn(member);
    UUID here = sessions.find(session.secret()).orElseThrow().credential();
    Given given = new Given(here, null, address());
    String token = tokens.create(member.actor(), new Tokens.Wish("script", null), given).token();
    accounts.ban(moderator.actor(), member.id(), "posted nothing but links");
    assertTrue(sessions.find(session.secret()).isEmpty());
    assertTrue(tokens.find(token, address()).isEmpty());
    assertThrows(EntryForbidden.class, () -> signIn(member));
    accounts.unban(moderator.actor(), member.id(), "a misunderstanding");
    assertTrue(sessions.find(session.secret()).isEmpty());
    signIn(member);
    assertEquals(
        List.of("join", "ban", "unban"),
        db.createNativeQuery("select action from audit where entity_id = :id order by seq")
            .setParameter("id", member.id().toString())
            .getResultList());
  }

  @Test
  void aRoleReachesLiveSessionsAtOnce() {
    MemberView member = join();
    SignedIn session = signIn(member);
    accounts.changeRole(join().actor(), member.id(), Role.MODERATOR, "stood for it");
    assertEquals(Role.MODERATOR, sessions.find(session.secret()).orElseThrow().member().role());
  }

  @Test
  void aSessionUnusedTooLongOrTooOldIsOver() {
    MemberView member = join();
    SignedIn idle = signIn(member);
    SignedIn old = signIn(member);
    age(idle, "last_seen = now() - interval '15 days'");
    age(old, "expires_at = now() - interval '1 second'");
    assertTrue(sessions.find(idle.secret()).isEmpty());
    assertTrue(sessions.find(old.secret()).isEmpty());
    assertTrue(sessions.of(member.id()).isEmpty());
  }

  @Test
  void beingSeenIsWrittenDownOnceAMinuteOnly() {
    SignedIn session = signIn(join());
    Object before = lastSeen(session);
    sessions.find(session.secret());
    assertEquals(before, lastSeen(session));
    age(session, "last_seen = now() - interval '2 minutes'");
    Object aged = lastSeen(session);
    sessions.find(session.secret());
    assertNotEquals(aged, lastSeen(session));
  }

  private void age(SignedIn session, String change) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery("update session set " + change + " where id_hash = :hash")
                    .setParameter("hash", Secrets.sha256(session.secret()))
                    .executeUpdate());
  }

  private Object lastSeen(SignedIn session) {
    return db.createNativeQuery("select last_seen from session where id_hash = :hash")
        .setParameter("hash", Secrets.sha256(session.secret()))
        .getSingleResult();
  }

  @Test
  void fiftyWrongPasswordsMakeTheRightOneWaitButNotForLong() {
    MemberView member = join();
    int refusedUnheard = 0;
    for (int i = 0; i < 50; i++) {
      refusedUnheard += turnedDown(member.handle(), i, address()) instanceof TooManyTries ? 1 : 0;
    }
    assertTrue(refusedUnheard > 40, "only the first few are even looked at");
    Duration wait = assertThrows(TooManyTries.class, () -> signIn(member)).retryAfter();
    assertTrue(wait.toSeconds() <= 30, "nobody can lock a member out for long: " + wait);
    waitIsOver(member.handle());
    signIn(member);
    assertInstanceOf(
        Unproven.class,
        turnedDown(member.handle(), 51, address()),
        "the right one wiped the slate");
  }

  private TurnedDown turnedDown(String handle, int wrong, String from) {
    return assertThrows(
        TurnedDown.class, () -> sessions.signIn(handle, "wrong " + wrong, "t", from));
  }

  private void waitIsOver(String handle) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "update attempt set last_at = now() - interval '1 minute'"
                            + " where subject = :subject")
                    .setParameter(
                        "subject", java.util.HexFormat.of().formatHex(Secrets.sha256(handle)))
                    .executeUpdate());
  }

  @Test
  void oneAddressIsSlowedDownWhateverNamesItTries() {
    String address = address();
    boolean slowed = false;
    for (int i = 0; i < 40 && !slowed; i++) {
      slowed = turnedDown("nobody" + i, i, address) instanceof TooManyTries;
    }
    assertTrue(slowed);
  }

  private boolean heard(Pace rule) {
    try {
      throttle.claim("test", "parallel", rule);
      return true;
    } catch (TooManyTries e) {
      return false;
    }
  }

  @Test
  void parallelTriesCannotSlipPastTheCount() throws Exception {
    Pace rule = new Pace(5, Duration.ofHours(1), Duration.ofMinutes(1), Duration.ofMinutes(5));
    ExecutorService many = Executors.newFixedThreadPool(8);
    try {
      Callable<Boolean> claim = () -> heard(rule);
      List<Future<Boolean>> tries = many.invokeAll(java.util.Collections.nCopies(40, claim));
      int heard = 0;
      for (Future<Boolean> one : tries) {
        heard += one.get() ? 1 : 0;
      }
      assertEquals(5, heard);
    } finally {
      many.shutdown();
    }
  }

  @Test
  void anUnknownNameCostsTheSameWorkAsAKnownOne() {
    MemberView member = join();
    long before = hashes();
    turnedDown(member.handle(), 1, address());
    long known = hashes() - before;
    turnedDown("nobody-" + member.handle(), 1, address());
    assertEquals(1, known);
    assertEquals(1, hashes() - before - known);
  }

  private long hashes() {
    return meters.timer("emberwell.password.hash").count();
  }

  @Test
  void theAuditLogTakesNoChanges() {
    MemberView member = join();
    audit.record(member.actor(), "test", "test", "1", "because", Map.of("a", 1));
    for (String sql :
        List.of("update audit set reason = 'x'", "delete from audit", "truncate audit")) {
      assertThrows(
          RuntimeException.class,
          () ->
              QuarkusTransaction.requiringNew()
                  .run(() -> db.createNativeQuery(sql).executeUpdate()),
          sql);
    }
  }

  @Test
  void aRepeatedWriteIsAnsweredAndNotDoneTwice() {
    MemberView member = join();
    AtomicInteger done = new AtomicInteger();
    byte[] print = Secrets.sha256("one");
    for (int i = 0; i < 3; i++) {
      Answered answered =
          (Answered) idempotency.once(member.id(), "key", print, () -> answer(done));
      assertEquals("1", answered.answer().body());
      assertEquals(i > 0, answered.replayed());
    }
    assertInstanceOf(
        Idempotency.OtherPayload.class,
        idempotency.once(member.id(), "key", Secrets.sha256("two"), () -> answer(done)));
    MemberView other = join();
    Answered own = (Answered) idempotency.once(other.id(), "key", print, () -> answer(done));
    assertEquals("2", own.answer().body(), "keys are each member's own");
  }

  private static Answer answer(AtomicInteger done) {
    return new Answer(201, "/here", null, Integer.toString(done.incrementAndGet()));
  }

  @Test
  void aFailedWriteLeavesItsKeyFreeAndNothingBehind() {
    MemberView member = join();
    byte[] print = Secrets.sha256("one");
    assertThrows(
        IllegalStateException.class,
        () ->
            idempotency.once(
                member.id(),
                "key",
                print,
                () -> {
                  audit.record(member.actor(), "half", "test", "1", "", Map.of());
                  throw new IllegalStateException("failed half way");
                }));
    assertEquals(
        0L,
        db.createNativeQuery(
                "select count(*) from audit where member_id = :id and action = 'half'", Long.class)
            .setParameter("id", member.id())
            .getSingleResult());
    AtomicInteger done = new AtomicInteger();
    assertInstanceOf(
        Answered.class, idempotency.once(member.id(), "key", print, () -> answer(done)));
  }

  @Test
  void theSameWriteOnAnotherConnectionIsStillRunning() throws Exception {
    MemberView member = join();
    byte[] print = Secrets.sha256("one");
    ExecutorService other = Executors.newSingleThreadExecutor();
    try {
      idempotency.once(
          member.id(),
          "key",
          print,
          () -> {
            Future<Idempotency.Result> meanwhile =
                other.submit(
                    () ->
                        idempotency.once(
                            member.id(), "key", print, () -> answer(new AtomicInteger())));
            try {
              assertInstanceOf(Idempotency.StillRunning.class, meanwhile.get());
            } catch (Exception e) {
              throw new IllegalStateException(e);
            }
            return answer(new AtomicInteger());
          });
    } finally {
      other.shutdown();
    }
  }

  @Test
  void membersAreFoundByIdAndNameAndShownByLabel() {
    MemberView member = join();
    assertEquals(
        member.id(), members.byHandle(member.handle().toUpperCase(Locale.ROOT)).orElseThrow().id());
    assertTrue(member.number() > 0);
    assertEquals(Map.of(member.id(), member.handle()), members.labels(List.of(member.id())));
    assertEquals(UnitPreferences.metric(), member.actor().units());
  }
}
