package club.emberwell.member;

import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which names nobody can choose, however they are spelt, since others would take their bearer for
 * the club itself. Names have letters a-z, digits, dashes and underscores only, which is the
 * strictest level of Unicode technical standard 39 (ASCII-Only): neither another script nor unseen
 * characters come in, and what looks alike is what {@code looks_like} in the database folds.
 */
final class NameRules {
  /** Whom readers would trust for the name alone; the roles besides. */
  private static final List<String> OFFICES =
      List.of(
          "admin",
          "admins",
          "administrator",
          "anonymous",
          "club",
          "desk",
          "emberwell",
          "everybody",
          "formermember",
          "help",
          "hostmaster",
          "mod",
          "mods",
          "moderators",
          "nobody",
          "noreply",
          "operator",
          "owners",
          "postmaster",
          "root",
          "security",
          "staff",
          "stranger",
          "support",
          "system",
          "team",
          "webmaster");

  private static final Set<String> TAKEN =
      Stream.concat(OFFICES.stream(), Arrays.stream(Role.values()).map(Role::code))
          .map(NameRules::looks)
          .collect(Collectors.toUnmodifiableSet());

  private NameRules() {}

  /**
   * What is wrong with a name that somebody chooses, if anything.
   *
   * @param club what the club calls itself
   */
  static Optional<Remark> chosen(String handle, String club) {
    if (handle.toLowerCase(Locale.ROOT).endsWith(MemberLimits.INVENTED)) {
      return refused(
          RemarkId.HANDLE_INVENTED,
          "A name cannot end in “"
              + MemberLimits.INVENTED
              + "”: the members of the example club are told apart by it.");
    }
    String bare = looks(handle.replaceAll("[-_0-9]+$", ""));
    boolean office = TAKEN.contains(bare) || TAKEN.contains(looks(handle));
    boolean itself = looks(handle).equals(looks(club.replaceAll("[^A-Za-z0-9]", "")));
    return office || itself
        ? refused(
            RemarkId.HANDLE_RESERVED,
            "Others would take this name for somebody in charge of the club. Choose another.")
        : Optional.empty();
  }

  private static Optional<Remark> refused(RemarkId id, String detail) {
    return Optional.of(Remark.error(id, "/handle", detail));
  }

  /** As {@code looks_like} in the database, without dashes. */
  private static String looks(String name) {
    return name.toLowerCase(Locale.ROOT)
        .replaceAll("[-_]", "")
        .replaceAll("[i1]", "l")
        .replace('0', 'o')
        .replace("m", "rn");
  }
}
