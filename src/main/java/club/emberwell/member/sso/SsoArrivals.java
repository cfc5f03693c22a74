package club.emberwell.member.sso;

import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Role;
import club.emberwell.member.Secrets;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Admissions;
import club.emberwell.member.door.Admissions.Terms;
import club.emberwell.member.door.Invitations;
import club.emberwell.member.door.JoinRequests;
import club.emberwell.member.door.NewMember;
import club.emberwell.member.session.IdentityLinkRepository;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.From;
import club.emberwell.member.session.Sessions.SignedIn;
import club.emberwell.member.sso.SsoRepository.Arrival;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import club.emberwell.remark.Unproven;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes accounts for people the provider vouches for, by the same doors as for everybody. */
@ApplicationScoped
public class SsoArrivals {
  private final SsoRepository rows;
  private final IdentityLinkRepository identities;
  private final MemberRepository members;
  private final Admissions admissions;
  private final Invitations invitations;
  private final JoinRequests requests;
  private final Sessions sessions;
  private final ClubOptions club;

  SsoArrivals(
      SsoRepository rows,
      IdentityLinkRepository identities,
      MemberRepository members,
      Admissions admissions,
      Invitations invitations,
      JoinRequests requests,
      Sessions sessions,
      ClubOptions club) {
    this.rows = rows;
    this.identities = identities;
    this.members = members;
    this.admissions = admissions;
    this.invitations = invitations;
    this.requests = requests;
    this.sessions = sessions;
    this.club = club;
  }

  /**
   * What came of an arrival.
   *
   * @param session empty for an account that waits for a moderator
   */
  public record Arrived(MemberView member, Optional<SignedIn> session) {}

  /**
   * Makes the account.
   *
   * @param secret the newcomer's
   * @param handle the name to have here
   * @param request where the door opens on request: what somebody says who asks
   * @param from what the session will be known by
   */
  public Arrived enter(String secret, String handle, String request, From from) {
    byte[] hash = Secrets.sha256(secret);
    Arrival arrival =
        QuarkusTransaction.requiringNew()
            .call(() -> rows.find(hash))
            .orElseThrow(() -> new Unproven("This took too long; sign in again."));
    NewMember entry = new NewMember(handle, freeAddress(arrival.email()), null).normal();
    List<Remark> remarks =
        new ArrayList<>(admissions.remarksWithoutPassword(entry.handle(), entry.email()));
    Terms terms = door(arrival, request, from.addressPrefix(), remarks);
    Remarks.refuse(remarks);
    MemberView member = admissions.admitWithoutPassword(entry, linking(terms, arrival, hash));
    return new Arrived(
        member,
        member.status() == MemberStatus.ACTIVE
            ? Optional.of(sessions.start(member.id(), from))
            : Optional.empty());
  }

  /** The terms, or remarks why there are none. */
  private Terms door(Arrival arrival, String request, String addressPrefix, List<Remark> remarks) {
    if (arrival.invitation() != null) {
      try {
        return invitations.terms(invitations.findHashed(arrival.invitation(), addressPrefix));
      } catch (EntryRefused e) {
        remarks.addAll(e.remarks());
        return null;
      }
    }
    return switch (club.door()) {
      case OPEN -> Terms.of(Role.MEMBER);
      case INVITATION ->
          throw new EntryForbidden(
              EntryForbidden.Why.CLUB, "This club takes new members by invitation only.");
      case REQUEST -> {
        remarks.addAll(requests.remarks(request));
        yield requests.terms(request);
      }
    };
  }

  private Terms linking(Terms terms, Arrival arrival, byte[] secret) {
    return new Terms(
        terms.role(),
        terms.status(),
        terms.action(),
        terms.detail(),
        terms.gate(),
        member -> {
          terms.after().accept(member);
          if (!identities.add(arrival.issuer(), arrival.subject(), member.id)) {
            throw new IllegalStateException("this account at the provider was linked meanwhile");
          }
          // the provider has proved it
          member.emailConfirmedAt = member.email == null ? null : Instant.now();
          rows.forget(secret);
        });
  }

  /**
   * The address unless somebody here has it: a name at the provider never takes an account over.
   */
  private String freeAddress(String email) {
    boolean taken =
        email != null
            && QuarkusTransaction.requiringNew().call(() -> members.emailTaken(email, null));
    return taken ? null : email;
  }
}
