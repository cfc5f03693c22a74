package club.emberwell.member.door;

import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Admissions.Terms;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** Takes in whoever comes, by the way they bring with them. */
@ApplicationScoped
public class Doors {
  private final Admissions admissions;
  private final Invitations invitations;
  private final JoinRequests requests;
  private final ClubOptions club;

  Doors(Admissions admissions, Invitations invitations, JoinRequests requests, ClubOptions club) {
    this.admissions = admissions;
    this.invitations = invitations;
    this.requests = requests;
    this.club = club;
  }

  /**
   * Makes an account. One that {@link MemberStatus#WAITING} was asked for, not given.
   *
   * @param invitation a code; null for none
   * @param request what somebody says who asks to come in; null for none
   * @throws EntryRefused for fields at fault, as a name that somebody has
   * @throws EntryForbidden where the door is shut
   */
  public MemberView enter(
      NewMember entry, String invitation, String request, String addressPrefix) {
    if (invitation != null && !invitation.isBlank()) {
      return invitations.accept(invitation, entry, addressPrefix);
    }
    return switch (club.door()) {
      case OPEN -> {
        if (request != null) {
          throw new EntryRefused(
              RemarkId.REQUEST_NEEDLESS, "/request", "Anybody can join; you need not ask.");
        }
        yield admissions.join(entry, addressPrefix, Terms.of(Role.MEMBER), List.of());
      }
      case REQUEST -> requests.ask(entry, request, addressPrefix);
      case INVITATION ->
          throw new EntryForbidden(
              EntryForbidden.Why.CLUB, "This club takes new members by invitation only.");
    };
  }

  /** Adds a member from the club's own side: same checks, but neither door nor throttle. */
  public MemberView enrol(NewMember entry, Role role) {
    return admissions.enrol(entry, role);
  }

  /**
   * Adds a member whom no person stands behind: nobody can sign in as one.
   *
   * @param joined told the id in the same transaction
   */
  public MemberView enrolInvented(String handle, Consumer<UUID> joined) {
    return admissions.admitWithoutPassword(
        new NewMember(handle, null, null),
        new Terms(
            Role.MEMBER,
            MemberStatus.ACTIVE,
            "invent",
            Map.of(),
            Optional::empty,
            member -> joined.accept(member.id)));
  }
}
