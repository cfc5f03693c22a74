package club.emberwell.member.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** The rows behind {@link AccountData}. */
@ApplicationScoped
class AccountDataRepository {
  /** Everything about an account that goes or is blanked, in this order. */
  private static final List<String> ERASING =
      List.of(
          """
          delete from session where member_id = :member
          """,
          """
          delete from api_token where member_id = :member
          """,
          """
          delete from idempotency where member_id = :member
          """,
          """
          delete from once_link where member_id = :member
          """,
          """
          delete from mail_outbox where member_id = :member
          """,
          """
          delete from sso_arrival a using identity_link l
           where l.member_id = :member and a.issuer = l.issuer and a.subject = l.subject
          """,
          """
          delete from identity_link where member_id = :member
          """,
          """
          delete from join_request where member_id = :member
          """,
          """
          update invitation set note = '', revoked_at = coalesce(revoked_at, now())
           where member_id = :member
          """,
          """
          update audit set reason = ''
           where reason <> '' and entity = 'member' and entity_id = cast(:member as text)
          """,
          """
          update member
             set handle = 'former member', email = null, email_confirmed_at = null,
                 password_hash = null, role = 'member', status = 'erased', number_style = 'any',
                 units = '{}', version = version + 1
           where id = :member
          """);

  private final Session db;

  AccountDataRepository(Session db) {
    this.db = db;
  }

  void erase(UUID member) {
    ERASING.forEach(
        sql -> db.createNativeMutationQuery(sql).setParameter("member", member).executeUpdate());
  }

  List<String> account(UUID member) {
    return json(
        """
        select id, number, handle, email, email_confirmed_at, role, number_style, units, created_at
          from member where id = :member
        """,
        member);
  }

  List<String> sessions(UUID member) {
    return json(
        """
        select label, created_at, last_seen, expires_at
          from session where member_id = :member order by created_at
        """,
        member);
  }

  List<String> tokens(UUID member) {
    return json(
        """
        select label, scopes, created_at, expires_at, last_used, revoked_at
          from api_token where member_id = :member order by created_at
        """,
        member);
  }

  List<String> request(UUID member) {
    return json(
        """
        select text, asked_at, decided_at, accepted, reason
          from join_request where member_id = :member
        """,
        member);
  }

  List<String> invitations(UUID member) {
    return json(
        """
        select note, most, used, created_at, expires_at, revoked_at
          from invitation where member_id = :member order by created_at
        """,
        member);
  }

  List<String> log(UUID member) {
    return json(
        """
        select at, action, entity, entity_id, reason, detail
          from audit where member_id = :member order by seq
        """,
        member);
  }

  private List<String> json(String select, UUID member) {
    return db.createNativeQuery(
            "select cast(to_jsonb(t) as text) from (%s) t".formatted(select), String.class)
        .setParameter("member", member)
        .getResultList();
  }
}
