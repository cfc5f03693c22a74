package club.emberwell.exchange;

import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.pace.Throttle;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** The account itself, what signs it in, and its place in the log. */
@Priority(100)
@ApplicationScoped
class AccountData implements PersonalData {
  /** Everything about an account that goes or is blanked, in this order. */
  private static final String ERASING =
      """
      delete from sign_in where member_id = :member;
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
             units = '{}', licence = null, named = false, version = version + 1
       where id = :member;
      """;

  private final MemberRepository members;
  private final Throttle attempts;

  AccountData(MemberRepository members, Throttle attempts) {
    this.members = members;
    this.attempts = attempts;
  }

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "account.json",
            """
            select id, number, handle, email, email_confirmed_at, role, number_style, units, licence,
              named, created_at
              from member where id = :member
            """),
        new Rows(
            "sessions.json",
            """
            select label, created_at, last_seen, expires_at
              from session where member_id = :member order by created_at
            """),
        new Rows(
            "sign-ins.json",
            """
            select at, event, network, label from sign_in where member_id = :member order by id
            """),
        new Rows(
            "tokens.json",
            """
            select label, scopes, created_at, expires_at, last_used, revoked_at
              from api_token where member_id = :member order by created_at
            """),
        new Rows(
            "request.json",
            """
            select text, asked_at, decided_at, accepted, reason
              from join_request where member_id = :member
            """),
        new Rows(
            "invitations.json",
            """
            select note, most, used, created_at, expires_at, revoked_at
              from invitation where member_id = :member order by created_at
            """),
        new Rows(
            "log.json",
            """
            select at, action, entity, entity_id, reason, detail
              from audit_line where member_id = :member order by seq
            """));
  }

  @Override
  public String erasing(Choice choice) {
    return ERASING;
  }

  @Override
  public void erase(UUID member, Choice choice, MemberRowsRepository rows) {
    Member shell = members.findById(member);
    attempts.forgetSubject(shell.handle.toLowerCase(Locale.ROOT));
    attempts.forgetSubject(member.toString());
    if (shell.email != null) {
      attempts.forgetSubject(shell.email.toLowerCase(Locale.ROOT));
    }
    members.flush();
    PersonalData.super.erase(member, choice, rows);
    members.reread(shell);
  }
}
