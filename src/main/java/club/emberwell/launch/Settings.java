package club.emberwell.launch;

import club.emberwell.access.BodyLimits;
import club.emberwell.access.traffic.TrafficLimits;
import club.emberwell.card.CardLimits;
import club.emberwell.desk.DeskConfig;
import club.emberwell.entry.change.RenewalLimits;
import club.emberwell.exchange.PersonalDataLimits;
import club.emberwell.exchange.bench.CopyLimits;
import club.emberwell.hook.HookConfig;
import club.emberwell.keep.BackupSettings;
import club.emberwell.member.account.LinkLimits;
import club.emberwell.member.door.DoorDefaults;
import club.emberwell.member.door.DoorLimits;
import club.emberwell.member.mail.MailConfig;
import club.emberwell.member.pace.WriteLimits;
import club.emberwell.member.session.SignInLimits;
import club.emberwell.member.session.SignInProvider;
import club.emberwell.report.photo.PictureLimits;
import club.emberwell.web.outside.SecurityReports;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.smallrye.config.common.utils.StringUtil;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * All that an operator can set, from where the program itself has it: the interfaces below, and
 * {@code application.properties}.
 */
final class Settings {
  /** Every interface of settings; {@code SettingsTest} finds those that are missing. */
  static final List<Class<?>> MAPPINGS =
      List.of(
          BodyLimits.class,
          DatabaseTimes.class,
          BackupSettings.class,
          CardLimits.class,
          CopyLimits.class,
          DeskConfig.class,
          DoorDefaults.class,
          DoorLimits.class,
          HookConfig.class,
          LinkLimits.class,
          MailConfig.class,
          PersonalDataLimits.class,
          PictureLimits.class,
          RenewalLimits.class,
          SecurityReports.class,
          SignInLimits.class,
          SignInProvider.class,
          StorageCheck.Room.class,
          TrafficLimits.class,
          WriteLimits.class);

  /** What the launcher tells the application, and no operator. */
  private static final Set<String> OF_THE_LAUNCHER = Set.of("emberwell.database.kind");

  private static final String OURS = "emberwell.";

  private final TreeMap<String, Setting> byName = new TreeMap<>();

  private Settings() {
    Properties defaults = Given.defaults();
    for (Class<?> mapping : MAPPINGS) {
      String prefix = mapping.getAnnotation(ConfigMapping.class).prefix();
      for (Method method : mapping.getDeclaredMethods()) {
        String name = prefix + "." + StringUtil.skewer(method.getName());
        WithDefault preset = method.getAnnotation(WithDefault.class);
        add(name, valueType(method.getGenericReturnType()), preset == null ? null : preset.value());
      }
    }
    Stream.concat(Kinds.named().stream(), defaults.stringPropertyNames().stream())
        .filter(name -> name.startsWith(OURS) && !OF_THE_LAUNCHER.contains(name))
        .filter(name -> !byName.containsKey(name))
        .forEach(name -> add(name, String.class, null));
    byName.replaceAll(
        (name, each) ->
            defaults.containsKey(name)
                ? new Setting(name, each.kind(), Optional.of(defaults.getProperty(name)))
                : each);
  }

  private void add(String name, Class<?> type, String preset) {
    Kind kind = Kinds.of(name, type).orElse(Kinds.TEXT);
    byName.put(name, new Setting(name, kind, Optional.ofNullable(preset)));
  }

  /** What one value is: of an optional what it holds, of a list what each is. */
  static Class<?> valueType(Type type) {
    return type instanceof ParameterizedType generic
        ? valueType(generic.getActualTypeArguments()[0])
        : (Class<?>) type;
  }

  /** All of them, by name. */
  static Settings known() {
    return new Settings();
  }

  /** In the order of their names. */
  List<Setting> all() {
    return List.copyOf(byName.values());
  }

  /** The setting of this name in a file. */
  Optional<Setting> named(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  /** Whether an environment variable is one of ours that means something. */
  boolean hasVariable(String variable) {
    return all().stream()
        .anyMatch(
            each ->
                each.variable().equals(variable)
                    || each.mayStandInFile() && (each.variable() + "_FILE").equals(variable));
  }
}
