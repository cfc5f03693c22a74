package club.emberwell.member.account;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Tokens;
import club.emberwell.remark.ConfirmationNeeded;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Owners sign others out, where a phone was lost or somebody else may have come in. */
@ApplicationScoped
public class SignOuts {
  private static final String ACTION = "sign-out";

  private final MemberRepository members;
  private final Sessions sessions;
  private final Tokens tokens;
  private final Proof proof;
  private final Audit audit;

  SignOuts(MemberRepository members, Sessions sessions, Tokens tokens, Proof proof, Audit audit) {
    this.members = members;
    this.sessions = sessions;
    this.tokens = tokens;
    this.proof = proof;
    this.audit = audit;
  }

  /**
   * Who is to be signed out.
   *
   * @param everybody the whole club; then there is no name
   * @param keepTokens whether programs go on
   */
  public record Wish(String handle, boolean everybody, boolean keepTokens, String reason) {}

  /**
   * Ends sessions, and tokens with them. Of everybody's, the owner's own session goes on from which
   * it was asked.
   *
   * @throws ConfirmationNeeded where the owner has not proved a moment ago that it is them
   */
  public void signOut(Actor owner, Wish wish, Given given) {
    Optional<UUID> one = QuarkusTransaction.requiringNew().call(() -> read(wish));
    proof.recent(owner, given);
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                one.ifPresentOrElse(
                    member -> end(owner, member, wish), () -> endAll(owner, given, wish)));
  }

  private Optional<UUID> read(Wish wish) {
    List<Remark> remarks = new ArrayList<>();
    MemberChecks.text(wish.reason(), "/reason", 1, MemberLimits.REASON_MAX, true, remarks);
    String name = wish.handle() == null ? "" : wish.handle().strip();
    Optional<Member> member = members.byHandle(name).filter(Member::active);
    if (wish.everybody() && !name.isEmpty()) {
      remarks.add(
          Remark.error(
              RemarkId.MEMBER_UNKNOWN,
              "/handle",
              "Name one member or choose everybody, not both."));
    } else if (!wish.everybody() && member.isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.MEMBER_UNKNOWN, "/handle", "No active member here has this name."));
    }
    Remarks.refuse(remarks);
    return member.map(found -> found.id);
  }

  private void end(Actor owner, UUID member, Wish wish) {
    sessions.endAll(member);
    if (!wish.keepTokens()) {
      tokens.revokeAll(member);
    }
    record(owner, "member", member.toString(), wish);
  }

  private void endAll(Actor owner, Given given, Wish wish) {
    sessions.endAllBut(given.credential());
    if (!wish.keepTokens()) {
      tokens.revokeEveryone();
    }
    record(owner, "club", "everybody", wish);
  }

  private void record(Actor owner, String entity, String id, Wish wish) {
    audit.record(
        owner,
        ACTION,
        entity,
        id,
        wish.reason().strip(),
        Map.of("tokens", wish.keepTokens() ? "kept" : "ended"));
  }
}
