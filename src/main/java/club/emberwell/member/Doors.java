package club.emberwell.member;

import club.emberwell.member.Accounts.NewMember;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;

/** Takes in whoever comes, by the way they bring with them. */
@ApplicationScoped
public class Doors {
  private final Accounts accounts;
  private final Invitations invitations;
  private final JoinRequests requests;
  private final ClubSettings club;

  Doors(Accounts accounts, Invitations invitations, JoinRequests requests, ClubSettings club) {
    this.accounts = accounts;
    this.invitations = invitations;
    this.requests = requests;
    this.club = club;
  }

  /**
   * Makes an account. One that {@link MemberStatus#WAITING} was asked for, not given.
   *
   * @param invitation a code; null for none
   * @param request what somebody says who asks to come in; null for none
   */
  public Outcome<MemberView> enter(
      NewMember entry, String invitation, String request, String addressPrefix) {
    if (invitation != null && !invitation.isBlank()) {
      return invitations.accept(invitation, entry, addressPrefix);
    }
    return switch (club.door()) {
      case OPEN ->
          request == null
              ? accounts.register(entry, addressPrefix)
              : Outcome.refused(
                  Remark.error(
                      RemarkId.REQUEST_NEEDLESS, "/request", "The door is open; nothing to ask."));
      case REQUEST -> requests.ask(entry, request, addressPrefix);
      case INVITATION -> new Outcome.Denied<>("This club takes new members by invitation only.");
    };
  }
}
