package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingForm;
import club.emberwell.report.reading.WorkForm;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The form for a result in one state: one part after the other, of each what applies. What does not
 * is hidden by the stylesheet, by the classes that stand here; without it all is in sight.
 *
 * @param machines the member's own
 */
public record PostEntry(Purpose purpose, Form form, Words.Lists words, List<Machine> machines) {
  /** What the form is for. */
  public enum Kind {
    /** A first result. */
    FIRST,
    /** One more after the last; what it likely shares with that is filled in, to be looked at. */
    AGAIN,
    /** The next of a row, of which all is filled in that it likely shares with one before. */
    NEXT,
    /** One's own trial of another's result: how it came out is asked first. */
    REPEAT,
    EDIT
  }

  /** What the form is for, and where it is sent to. */
  public record Purpose(String heading, String action, Kind kind) {
    public boolean isRepeat() {
      return kind == Kind.REPEAT;
    }

    public boolean isAgain() {
      return kind == Kind.AGAIN;
    }

    public boolean isNext() {
      return kind == Kind.NEXT;
    }
  }

  /**
   * A field as it stands on the form.
   *
   * @param when the classes that tell where it is not asked for
   */
  public record Asked(Field field, String when) {
    public boolean isTyped() {
      return field.getOptions().isEmpty();
    }
  }

  /** A machine to choose, and whether its beam never stops. */
  public record Choice(Field.Option option, boolean continuous) {}

  /** Whether it is about many tests, which it leaves as they are. */
  public boolean isGrid() {
    return form.find("effect").isEmpty();
  }

  public List<Choice> getChoices() {
    return form.field("machine").getOptions().stream()
        .map(option -> new Choice(option, isContinuous(option.value())))
        .toList();
  }

  private boolean isContinuous(String id) {
    return machines.stream()
        .filter(machine -> machine.id().toString().equals(id))
        .anyMatch(machine -> !Setting.PULSE_DURATION.appliesTo(machine.laser()));
  }

  /** What was worked on, in a line: what the next result shares with the one before. */
  public String getSame() {
    Stream<String> said =
        Stream.of("machine", "process")
            .map(name -> chosen(form.field(name)))
            .filter(Objects::nonNull);
    Stream<String> work =
        Stream.of(getPiece(), getFinish(), getOfProcess())
            .flatMap(List::stream)
            .map(asked -> asked.field().getValue())
            .filter(text -> !text.isEmpty());
    return Stream.concat(said, work).collect(Collectors.joining(", "));
  }

  private static String chosen(Field field) {
    return field.getOptions().stream()
        .filter(Field.Option::selected)
        .map(Field.Option::label)
        .findFirst()
        .orElse(null);
  }

  /** What has something to correct stands open. */
  public boolean isMoreOpen() {
    return toCorrect(fields(SettingForm.Group.MORE));
  }

  public boolean isWordsOpen() {
    return toCorrect(List.of(getNotes(), getBeside()).stream().flatMap(List::stream).toList())
        || form.find("defects").filter(f -> f.isFailed() || f.isWarned()).isPresent();
  }

  /** How many of the folded settings hold something, so that none is sent unnoticed. */
  public long getMoreFilled() {
    return fields(SettingForm.Group.MORE).stream()
        .filter(asked -> !asked.field().getValue().isEmpty())
        .count();
  }

  /** The settings that everybody sets. */
  public List<Asked> getMain() {
    return fields(SettingForm.Group.MAIN);
  }

  /** Those of pulsed lasers. */
  public List<Asked> getPulses() {
    return fields(SettingForm.Group.PULSES);
  }

  /** The folded settings, those that are typed first. */
  public List<Asked> getMore() {
    List<Asked> more = fields(SettingForm.Group.MORE);
    return Stream.concat(
            more.stream().filter(Asked::isTyped), more.stream().filter(a -> !a.isTyped()))
        .toList();
  }

  public List<Asked> getPiece() {
    return fields(WorkForm.Group.PIECE);
  }

  public List<Asked> getFinish() {
    return fields(WorkForm.Group.FINISH);
  }

  public List<Asked> getOfProcess() {
    return fields(WorkForm.Group.OF_PROCESS);
  }

  public List<Asked> getNotes() {
    return fields(WorkForm.Group.NOTES);
  }

  public List<Asked> getBeside() {
    return fields(WorkForm.Group.BESIDE);
  }

  private List<Asked> fields(WorkForm.Group group) {
    return Stream.of(WorkProperty.values())
        .filter(property -> property.form().group() == group)
        .map(property -> asked(property.code(), when(property)))
        .toList();
  }

  private List<Asked> fields(SettingForm.Group group) {
    return Setting.of(group).stream()
        .map(setting -> asked(SettingFields.name(setting), when(setting)))
        .toList();
  }

  private Asked asked(String name, String when) {
    Field field = form.field(name);
    return new Asked(field, field.isFailed() || field.isWarned() ? "" : when);
  }

  private static String when(Setting setting) {
    String pulses =
        setting.form().applies() == SettingForm.Applies.TO_PULSED_LASERS ? "pulses" : "";
    return classes("never-at-", process -> !setting.appliesTo(process), pulses);
  }

  private static String when(WorkProperty property) {
    Predicate<Process> not = process -> !property.form().isAskedAt(process);
    long seldom = Stream.of(Process.values()).filter(not).count();
    return classes("not-at-", not, seldom * 2 > Process.values().length ? "seldom" : "");
  }

  private static String classes(String prefix, Predicate<Process> at, String first) {
    List<String> classes = new ArrayList<>();
    if (!first.isEmpty()) {
      classes.add(first);
    }
    Stream.of(Process.values()).filter(at).map(p -> prefix + p.code()).forEach(classes::add);
    return String.join(" ", classes);
  }

  private static boolean toCorrect(List<Asked> fields) {
    return fields.stream().anyMatch(a -> a.field().isFailed() || a.field().isWarned());
  }
}
