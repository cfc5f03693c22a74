package club.emberwell.member.session;

import club.emberwell.member.Actor;
import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.remark.Unproven;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.UUID;

/**
 * That it is truly the member who asks for something grave: by the password, or, for somebody who
 * signs in elsewhere, by having done so a moment ago.
 */
@ApplicationScoped
public class Proof {
  private final MemberRepository members;
  private final SessionRepository sessions;
  private final Sessions signIn;
  private final SignInLimits limits;

  Proof(
      MemberRepository members, SessionRepository sessions, Sessions signIn, SignInLimits limits) {
    this.members = members;
    this.sessions = sessions;
    this.signIn = signIn;
    this.limits = limits;
  }

  /**
   * Proves a member, throttled like a sign-in.
   *
   * @param session the session of the request; null or a token's id where there is none
   * @throws Unproven where it does not prove the member
   */
  public void of(Actor actor, UUID session, String password, String addressPrefix) {
    Member member =
        QuarkusTransaction.requiringNew().call(() -> members.findById(actor.memberId()));
    if (member.passwordHash != null) {
      signIn.prove(member.handle, password, addressPrefix);
      return;
    }
    Instant since = Instant.now().minus(limits.fresh());
    boolean fresh =
        QuarkusTransaction.requiringNew()
            .call(() -> sessions.begunSince(actor.memberId(), session, since));
    if (!fresh) {
      throw new Unproven(
          "Sign out, sign in again, and do this within "
              + limits.fresh().toMinutes()
              + " minutes.");
    }
  }
}
