package club.emberwell.launch;

import java.util.Optional;
import java.util.Set;

/**
 * Something an operator can set.
 *
 * @param name as in {@code emberwell.properties}
 * @param kind how its value is written
 * @param preset the value it has by itself, with expressions; empty where it is unset by itself
 */
record Setting(String name, Kind kind, Optional<String> preset) {
  private static final Set<String> SECRET =
      Set.of(
          "emberwell.database.password", "emberwell.mail.password", "emberwell.sso.client-secret");

  /** The address may hold a password, so it is shown without and never repeated. */
  private static final String ADDRESS_WITH_LOGIN = "emberwell.database.url";

  private static final String MASK = "********";

  /** As an environment variable. */
  String variable() {
    return Given.variable(name);
  }

  /** Whether a variable with {@code _FILE} behind may name a file that holds it. */
  boolean mayStandInFile() {
    return Given.FROM_FILES.contains(name);
  }

  /** Whether what was given may be repeated to whoever reads the console. */
  boolean repeatable() {
    return !SECRET.contains(name) && !name.equals(ADDRESS_WITH_LOGIN);
  }

  /** The value as it may be shown. */
  String shown(String value) {
    if (name.equals(ADDRESS_WITH_LOGIN) && kind.fits().test(value)) {
      return Database.of(value, "", "").url().replaceAll("\\?.*", "");
    }
    return repeatable() ? value : MASK;
  }
}
