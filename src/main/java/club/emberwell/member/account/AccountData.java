package club.emberwell.member.account;

import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.PersonalData;
import club.emberwell.member.pace.Throttle;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Locale;
import java.util.UUID;

/** The account itself, what signs it in, and its place in the log. */
@ApplicationScoped
class AccountData implements PersonalData {
  private static final int LAST = 1000;

  private final AccountDataRepository rows;
  private final MemberRepository members;
  private final Throttle attempts;

  AccountData(AccountDataRepository rows, MemberRepository members, Throttle attempts) {
    this.rows = rows;
    this.members = members;
    this.attempts = attempts;
  }

  @Override
  public int order() {
    return LAST;
  }

  @Override
  public void write(UUID member, Parcel parcel) {
    parcel.rows("account.json", rows.account(member).stream());
    parcel.rows("sessions.json", rows.sessions(member).stream());
    parcel.rows("tokens.json", rows.tokens(member).stream());
    parcel.rows("request.json", rows.request(member).stream());
    parcel.rows("invitations.json", rows.invitations(member).stream());
    parcel.rows("log.json", rows.log(member).stream());
  }

  @Override
  public void erase(UUID member, Choice choice) {
    Member shell = members.findById(member);
    attempts.forgetSubject(shell.handle.toLowerCase(Locale.ROOT));
    attempts.forgetSubject(member.toString());
    if (shell.email != null) {
      attempts.forgetSubject(shell.email.toLowerCase(Locale.ROOT));
    }
    members.flush();
    rows.erase(member);
    members.reread(shell);
  }
}
