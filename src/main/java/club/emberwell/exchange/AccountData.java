package club.emberwell.exchange;

import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.pace.Throttle;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Locale;
import java.util.UUID;

/** The account itself, what signs it in, and its place in the log. */
@ApplicationScoped
class AccountData implements PersonalData {
  private static final int LAST = 1000;

  /** Everything about an account that goes or is blanked, in this order. */
  private static final String ERASING =
      """
      delete from session where member_id = :member;
      delete from api_token where member_id = :member;
      delete from idempotency where member_id = :member;
      delete from once_link where member_id = :member;
      delete from mail_outbox where member_id = :member;
      delete from sso_arrival a using identity_link l
       where l.member_id = :member and a.issuer = l.issuer and a.subject = l.subject;
      delete from identity_link where member_id = :member;
      delete from join_request where member_id = :member;
      update invitation set note = '', revoked_at = coalesce(revoked_at, now())
       where member_id = :member;
      update audit set reason = ''
       where reason <> '' and entity = 'member' and entity_id = cast(:member as text);
      update member
         set handle = 'former member', email = null, email_confirmed_at = null,
             password_hash = null, role = 'member', status = 'erased', number_style = 'any',
             units = '{}', version = version + 1
       where id = :member;
      """;

  private final MemberRowsRepository rows;
  private final MemberRepository members;
  private final Throttle attempts;

  AccountData(MemberRowsRepository rows, MemberRepository members, Throttle attempts) {
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
    parcel.rows(
        "account.json",
        rows.json(
            """
            select id, number, handle, email, email_confirmed_at, role, number_style, units, created_at
              from member where id = :member
            """,
            member));
    parcel.rows(
        "sessions.json",
        rows.json(
            """
            select label, created_at, last_seen, expires_at
              from session where member_id = :member order by created_at
            """,
            member));
    parcel.rows(
        "tokens.json",
        rows.json(
            """
            select label, scopes, created_at, expires_at, last_used, revoked_at
              from api_token where member_id = :member order by created_at
            """,
            member));
    parcel.rows(
        "request.json",
        rows.json(
            """
            select text, asked_at, decided_at, accepted, reason
              from join_request where member_id = :member
            """,
            member));
    parcel.rows(
        "invitations.json",
        rows.json(
            """
            select note, most, used, created_at, expires_at, revoked_at
              from invitation where member_id = :member order by created_at
            """,
            member));
    parcel.rows(
        "log.json",
        rows.json(
            """
            select at, action, entity, entity_id, reason, detail
              from audit_line where member_id = :member order by seq
            """,
            member));
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
    rows.run(ERASING, member);
    members.reread(shell);
  }
}
