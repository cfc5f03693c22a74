package club.emberwell.member.mail;

import club.emberwell.member.Member;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.mail.MailOutboxRepository.Queued;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.UUID;

/**
 * Letters to members. A letter is a row written in the caller's transaction, so it leaves exactly
 * if the deed it tells of stands; {@link MailSender} sends it afterwards. Where no mail server is
 * configured, or the member has no proved address, nothing is queued and all goes on without.
 */
@ApplicationScoped
public class MailOutbox {
  private final MailOutboxRepository rows;
  private final MemberRepository members;
  private final Unsubscribing unsubscribing;
  private final MailConfig config;

  MailOutbox(
      MailOutboxRepository rows,
      MemberRepository members,
      Unsubscribing unsubscribing,
      MailConfig config) {
    this.rows = rows;
    this.members = members;
    this.unsubscribing = unsubscribing;
    this.config = config;
  }

  /** Whether this server sends mail at all. */
  public boolean available() {
    return config.host().filter(host -> !host.isBlank()).isPresent();
  }

  /** How the outbox stands. */
  public record State(boolean available, long waiting, long failed) {}

  /** For the owners' page: a growing number says that the mail server is away. */
  @Transactional
  public State state() {
    MailOutboxRepository.Counts counts = rows.counts();
    return new State(available(), counts.waiting(), counts.failed());
  }

  /**
   * Queues a letter to a member's proved address.
   *
   * @param kind what it is about, lower case with dashes, e.g. {@code watch}
   * @param subject one line
   * @param text plain text; the club's name and address are set below it
   * @return false where nothing was queued: no mail server, no proved address, or not active
   */
  @Transactional
  public boolean queue(UUID memberId, String kind, String subject, String text) {
    Member member = members.findById(memberId);
    return reachable(member) && queueUnproved(member, kind, subject, text);
  }

  private static boolean reachable(Member member) {
    return member != null && member.emailConfirmedAt != null && member.active();
  }

  /** The same for a letter that comes again and again: it carries the way to end it. */
  @Transactional
  public boolean queue(UUID memberId, LetterKind kind, String subject, String text) {
    Member member = members.findById(memberId);
    if (!available() || !reachable(member)) {
      return false;
    }
    rows.add(
        new Queued(
            memberId,
            member.email,
            kind.code(),
            subject,
            text,
            unsubscribing.link(memberId, kind)));
    return true;
  }

  /** The same to an address that was only said: for what the person asked for just now. */
  public boolean queueUnproved(Member member, String kind, String subject, String text) {
    if (!available() || member.email == null) {
      return false;
    }
    rows.add(new Queued(member.id, member.email, kind, subject, text, null));
    return true;
  }
}
