package club.emberwell.launch;

import static java.util.Map.entry;

import club.emberwell.access.ProxyNetwork;
import club.emberwell.member.pace.Pace;
import club.emberwell.web.outside.SecurityReports;
import com.cronutils.model.CronType;
import com.cronutils.model.definition.CronDefinitionBuilder;
import com.cronutils.parser.CronParser;
import io.quarkus.runtime.configuration.DurationConverter;
import io.smallrye.common.net.Inet;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Which setting is written how: by its type, and where that is a mere text, by its name. */
final class Kinds {
  /** A member of every scenario, so that a folder without one is none. */
  private static final String OF_A_SCENARIO = "members.csv";

  /** RFC 1123 section 2.1, and underscores, which container networks use. */
  private static final Pattern HOST =
      Pattern.compile("[A-Za-z0-9_]([A-Za-z0-9_-]*[A-Za-z0-9_])?(\\.[A-Za-z0-9_-]+)*\\.?");

  private static final Pattern MAIL = Pattern.compile("[^@\\s<>]+@[^@\\s<>]+");
  private static final Pattern MAIL_WITH_NAME = Pattern.compile("[^<>]*<([^<>]+)>");

  /** What the configuration reads as true; it would read any other word as false. */
  private static final Set<String> YES = Set.of("true", "yes", "y", "on", "1");

  private static final Set<String> NO = Set.of("false", "no", "n", "off", "0");

  static final Kind TEXT = new Kind("a text", text -> true);

  private static final Kind COUNT = whole(1, Long.MAX_VALUE);
  private static final Kind COUNT_OR_NONE = whole(0, Integer.MAX_VALUE);
  private static final Kind TIME =
      Kind.read("a time such as 30S, 5M, 2H or 14D", text -> requirePositive(text));
  private static final Kind EVERY =
      new Kind(TIME.words() + ", or off", text -> text.equals("off") || TIME.fits().test(text));
  private static final Kind YES_OR_NO =
      new Kind("true or false", text -> isYes(text) || NO.contains(lower(text)));
  private static final Kind PACE =
      Kind.read("a pace such as \"5 in 1H, then 1S to 30S\"", Pace::of);
  private static final Kind HOST_NAME =
      new Kind("the name or address of a computer", Kinds::isHost);
  private static final Kind FOLDER =
      new Kind("a folder that can be written", text -> isWritable(Path.of(text)));
  private static final Kind FILE =
      new Kind("a file in a folder that can be written", text -> isFile(Path.of(text)));
  private static final Kind SCENARIO =
      new Kind("none or a scenario of this program such as seed-scenario", Kinds::isScenario);
  private static final Kind CONTACT =
      Kind.read("an address of mail, tel:… or https://…", SecurityReports.Address::new);

  private static final Map<String, Kind> BY_NAME =
      Map.ofEntries(
          entry("emberwell.home", FOLDER),
          entry("emberwell.demo-home", FOLDER),
          entry("emberwell.host", HOST_NAME),
          entry("emberwell.port", whole(0, Address.LAST_PORT)),
          entry("emberwell.public-url", new Kind(Address.PUBLIC, Address::isPublicUrl)),
          entry(
              "emberwell.trusted-proxies",
              Kind.read("", text -> ProxyNetwork.read(text).count())
                  .list(
                      "addresses, networks (10.0.0.0/8) or names of computers that can be found,"
                          + " separated by commas")),
          entry("emberwell.scenario", SCENARIO),
          entry("emberwell.example", SCENARIO),
          entry("emberwell.demo", YES_OR_NO),
          entry("emberwell.demo.password", TEXT),
          entry("emberwell.demo.club-name", TEXT),
          entry("emberwell.index.dir", FOLDER),
          entry(
              "emberwell.index.compare",
              Kind.read("a time of day such as 0 30 3 * * ?, or off", Kinds::requireCron)),
          entry("emberwell.backup.dir", FOLDER),
          entry("emberwell.data.dir", FOLDER),
          entry("emberwell.data.signing-key", FILE),
          entry("emberwell.data.every", EVERY),
          entry("emberwell.catalog.poll", EVERY),
          entry("emberwell.watches.every", EVERY),
          entry("emberwell.database.url", new Kind(Database.WRITTEN, Database::isUrl)),
          entry("emberwell.database.user", TEXT),
          entry("emberwell.database.password", TEXT),
          entry("emberwell.database.wait-seconds", COUNT_OR_NONE),
          entry("emberwell.log.format", new Kind("text or json", Set.of("text", "json")::contains)),
          entry("emberwell.log.refusals", COUNT),
          entry("emberwell.metrics.open", YES_OR_NO),
          entry("emberwell.mail.host", HOST_NAME),
          entry("emberwell.mail.port", whole(1, Address.LAST_PORT)),
          entry("emberwell.mail.from", new Kind("an address of mail", Kinds::isMail)),
          entry("emberwell.mail.user", TEXT),
          entry("emberwell.mail.password", TEXT),
          entry("emberwell.mail.every", EVERY),
          entry(
              "emberwell.sso.issuer",
              Kind.read("an address such as https://login.club.example", Kinds::requireIssuer)),
          entry("emberwell.sso.client-id", TEXT),
          entry("emberwell.sso.client-secret", TEXT),
          entry("emberwell.sso.label", TEXT),
          entry(
              "emberwell.security.contact",
              CONTACT.list("addresses of mail, tel:… or https://…, separated by commas")),
          entry("emberwell.security.policy", CONTACT),
          entry("emberwell.desk.first-look", COUNT_OR_NONE),
          entry("emberwell.desk.rules-every", EVERY),
          entry(
              "emberwell.webhooks.allow",
              new Kind("", Kinds::isNetworkOrHost)
                  .list(
                      "networks (10.0.0.0/8), addresses or names of computers, separated by"
                          + " commas")),
          entry("emberwell.webhooks.every", EVERY));

  private static final Map<Class<?>, Kind> BY_TYPE =
      Map.of(
          int.class, whole(1, Integer.MAX_VALUE),
          long.class, COUNT,
          boolean.class, YES_OR_NO,
          Duration.class, TIME,
          LocalTime.class, Kind.read("a time of day such as 02:10", LocalTime::parse),
          Pace.class, PACE,
          ZoneId.class, Kind.read("a time zone such as UTC or Europe/Berlin", ZoneId::of));

  private Kinds() {}

  /** The settings that are known by name alone. */
  static Set<String> named() {
    return BY_NAME.keySet();
  }

  /** How a setting is written; empty where nothing says it. */
  static Optional<Kind> of(String name, Class<?> type) {
    if (BY_NAME.containsKey(name)) {
      return Optional.of(BY_NAME.get(name));
    }
    return type.isEnum() ? Optional.of(oneOf(type)) : Optional.ofNullable(BY_TYPE.get(type));
  }

  /** Whether a text means true. */
  static boolean isYes(String text) {
    return YES.contains(lower(text));
  }

  private static Kind oneOf(Class<?> type) {
    String[] words =
        Arrays.stream(type.getEnumConstants())
            .map(each -> each.toString().replace('_', '-'))
            .toArray(String[]::new);
    String last = words[words.length - 1];
    String others = String.join(", ", Arrays.asList(words).subList(0, words.length - 1));
    return new Kind(
        others + " or " + last,
        text -> Arrays.stream(words).anyMatch(word -> word.equalsIgnoreCase(text)));
  }

  private static Kind whole(long least, long most) {
    boolean bounded = most <= Address.LAST_PORT;
    return Kind.read(
        "a whole number from " + least + (bounded ? " to " + most : " up"),
        text -> {
          long number = Long.parseLong(text);
          if (number < least || number > most) {
            throw new IllegalArgumentException(text);
          }
        });
  }

  private static void requirePositive(String text) {
    Duration read = DurationConverter.parseDuration(text);
    if (read.isNegative() || read.isZero()) {
      throw new IllegalArgumentException(text);
    }
  }

  private static void requireCron(String text) {
    if (!text.equals("off")) {
      new CronParser(CronDefinitionBuilder.instanceDefinitionFor(CronType.QUARTZ))
          .parse(text)
          .validate();
    }
  }

  /** OpenID Connect Discovery 1.0 section 2: no query, no fragment. */
  private static void requireIssuer(String text) {
    URI uri = URI.create(text);
    boolean web = "https".equals(uri.getScheme()) || "http".equals(uri.getScheme());
    boolean bare = uri.getRawQuery() == null && uri.getRawFragment() == null;
    if (!web || uri.getHost() == null || !bare) {
      throw new IllegalArgumentException(text);
    }
  }

  private static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  private static boolean isHost(String text) {
    return Inet.parseInetAddress(text) != null
        || HOST.matcher(text).matches() && !text.matches("[0-9.]+");
  }

  private static boolean isNetworkOrHost(String text) {
    return text.contains("/") ? Inet.parseCidrAddress(text) != null : isHost(text);
  }

  private static boolean isMail(String text) {
    var named = MAIL_WITH_NAME.matcher(text);
    return MAIL.matcher(named.matches() ? named.group(1) : text).matches();
  }

  private static boolean isScenario(String text) {
    return text.equals("none")
        || text.matches("[A-Za-z0-9-]+")
            && Kinds.class.getResource("/" + text + "/" + OF_A_SCENARIO) != null;
  }

  private static boolean isFile(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    return folder != null
        && (Files.exists(file)
            ? Files.isRegularFile(file) && Files.isReadable(file)
            : isWritable(folder));
  }

  /** Whether it is a folder that can be written, or one that can be made. */
  private static boolean isWritable(Path folder) {
    Path nearest = folder.toAbsolutePath();
    while (nearest != null && !Files.exists(nearest)) {
      nearest = nearest.getParent();
    }
    return nearest != null && Files.isDirectory(nearest) && Files.isWritable(nearest);
  }
}
