package club.emberwell.member.session;

import club.emberwell.member.Actor;
import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.remark.ConfirmationNeeded;
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
   * What a request brings to prove its member.
   *
   * @param credential the session; null or a token's id where there is none
   * @param password null or empty where none came along
   * @param addressPrefix for counting wrong ones
   */
  public record Given(UUID credential, String password, String addressPrefix) {}

  /**
   * Lets pass who proved a moment ago, in this very session, that it is them, or proves it now by
   * the password. A token alone proves nothing.
   *
   * @throws ConfirmationNeeded where neither is so
   * @throws Unproven for a wrong password
   */
  public void recent(Actor actor, Given given) {
    Member member = member(actor);
    if (member.passwordHash != null && given.password() != null && !given.password().isEmpty()) {
      signIn.prove(member.handle, given.password(), given.addressPrefix());
      signIn.confirmed(actor.memberId(), given.credential());
    } else if (!fresh(actor, given.credential())) {
      throw new ConfirmationNeeded(member.passwordHash != null);
    }
  }

  /**
   * Proves a member, throttled like a sign-in.
   *
   * @param session the session of the request; null or a token's id where there is none
   * @throws Unproven for a wrong password
   * @throws ConfirmationNeeded where a sign-in elsewhere is too long ago
   */
  public void of(Actor actor, UUID session, String password, String addressPrefix) {
    Member member = member(actor);
    if (member.passwordHash != null) {
      signIn.prove(member.handle, password, addressPrefix);
      return;
    }
    if (!fresh(actor, session)) {
      throw new ConfirmationNeeded(false);
    }
  }

  private Member member(Actor actor) {
    return QuarkusTransaction.requiringNew().call(() -> members.findById(actor.memberId()));
  }

  private boolean fresh(Actor actor, UUID session) {
    Instant since = Instant.now().minus(limits.fresh());
    return QuarkusTransaction.requiringNew()
        .call(() -> sessions.confirmedSince(actor.memberId(), session, since));
  }
}
