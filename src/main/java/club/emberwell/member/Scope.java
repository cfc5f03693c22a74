package club.emberwell.member;

import club.emberwell.remark.Coded;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a token may be used for, within what its owner may do. What could take an account over asks
 * for the password besides, so no scope stands for that.
 */
public enum Scope implements Coded {
  READ,
  WRITE,
  /** Acting as the moderator or owner one is; without it a token's holder counts as a member. */
  MODERATE;

  @Override
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What a token has where nothing was chosen: all its owner can use today. */
  public static Set<Scope> usual(Role role) {
    return role.atLeast(Role.MODERATOR) ? EnumSet.allOf(Scope.class) : EnumSet.of(READ, WRITE);
  }

  /** Reads what {@link #stored} wrote; an unknown word allows nothing. */
  public static Set<Scope> read(String stored) {
    Set<Scope> scopes = EnumSet.noneOf(Scope.class);
    for (String word : stored.split(" ")) {
      Coded.of(Scope.class, word).ifPresent(scopes::add);
    }
    return scopes;
  }

  public static String stored(Collection<Scope> scopes) {
    return String.join(" ", codes(scopes));
  }

  /** Always in the same order. */
  public static List<String> codes(Collection<Scope> scopes) {
    return scopes.stream().sorted().map(Scope::code).collect(Collectors.toList());
  }
}
