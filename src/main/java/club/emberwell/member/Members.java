package club.emberwell.member;

import club.emberwell.quantity.UnitPreferences;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Finds accounts. */
@ApplicationScoped
public class Members {
  /** What stands in place of a name once a person is gone. */
  public static final String FORMER = "former member";

  /** Far below the most parameters a statement of PostgreSQL takes. */
  private static final int AT_ONCE = 10_000;

  private final MemberRepository members;

  Members(MemberRepository members) {
    this.members = members;
  }

  @Transactional
  public Optional<MemberView> byId(UUID id) {
    return members.findByIdOptional(id).map(Members::view);
  }

  /** Whatever the case of the letters. */
  @Transactional
  public Optional<MemberView> byHandle(String handle) {
    return members.byHandle(handle).map(Members::view);
  }

  /** Names to show, for many at once; {@value #FORMER} for those who left. */
  @Transactional
  public Map<UUID, String> labels(Collection<UUID> ids) {
    Map<UUID, String> labels = new HashMap<>();
    if (!ids.isEmpty()) {
      List<Member> found = members.list("id in ?1", ids);
      found.forEach(member -> labels.put(member.id, member.handle));
    }
    return labels;
  }

  /**
   * A member as others may name them.
   *
   * @param id null of nobody we know of (any more)
   * @param handle {@value #FORMER} of those who left
   */
  public record Named(UUID id, String handle) {
    public static final Named NOBODY = new Named(null, FORMER);
  }

  /** The same by the numbers that stand for members in columns. */
  @Transactional
  public Map<Long, Named> namedByNumber(Collection<Long> numbers) {
    Map<Long, Named> named = new HashMap<>();
    List<Long> all = List.copyOf(numbers);
    for (int from = 0; from < all.size(); from += AT_ONCE) {
      List<Long> some = all.subList(from, Math.min(all.size(), from + AT_ONCE));
      List<Member> found = members.list("number in ?1", some);
      found.forEach(member -> named.put(member.number, new Named(member.id, member.handle)));
    }
    return named;
  }

  /** Moderators and owners, owners first, in the order they joined. */
  @Transactional
  public List<MemberView> inCharge() {
    List<Member> found =
        members.list(
            "role in ?1 and status = ?2 order by role desc, number",
            List.of(Role.OWNER, Role.MODERATOR),
            MemberStatus.ACTIVE);
    return found.stream().map(Members::view).toList();
  }

  public static MemberView view(Member member) {
    return new MemberView(
        member.id,
        member.number,
        member.handle,
        new MemberView.Standing(member.role, member.status, member.createdAt),
        new MemberView.Contact(
            member.email, member.emailConfirmedAt != null, member.passwordHash != null),
        UnitPreferences.fromMap(member.units).with(member.numberStyle),
        new MemberView.Sharing(member.licence, member.named),
        member.version);
  }
}
