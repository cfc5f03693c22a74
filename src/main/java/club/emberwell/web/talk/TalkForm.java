package club.emberwell.web.talk;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

/** The fields of a question, an answer or a notice, and what was typed into them. */
final class TalkForm {
  static final String TITLE = "title";
  static final String TEXT = "text";
  static final String MATERIAL = "ties.material";
  static final String COATING = "ties.coating";
  static final String SOURCE = "ties.source";
  static final String PROCESS = "ties.process";
  static final String MODEL = "ties.machineModel";
  static final String CONTROLLER = "ties.controllerVersion";
  static final String REPORT = "ties.report";
  static final String REASON = "reason";

  private static final Option NOTHING = new Option("", "any", true);

  private TalkForm() {}

  /** The form with these values in it. */
  static Form of(TalkKind kind, Map<String, String> values) {
    Form form = new Form();
    if (kind != TalkKind.ANSWER) {
      form.add(
          Field.of(TITLE, kind == TalkKind.QUESTION ? "Your question in one line" : "Title")
              .hint("Name the material and what happens: others find it by these words.")
              .maxLength(TalkLimits.TITLE)
              .required());
    }
    form.add(
        Field.of(TEXT, kind == TalkKind.ANSWER ? "Your answer" : "The whole of it")
            .hint("Markdown: **bold**, - lists, > quotes, `code`. Pictures go with reports.")
            .maxLength(TalkLimits.TEXT)
            .required());
    if (kind != TalkKind.ANSWER) {
      ties(form);
    }
    values.forEach((name, value) -> form.find(name).ifPresent(field -> field.value(value)));
    return form;
  }

  /** The same with a reason, which readers of the history see. */
  static Form edit(TalkKind kind, Map<String, String> values) {
    return of(kind, values)
        .add(
            Field.of(REASON, "Why, if you like")
                .hint("Stands in the history.")
                .maxLength(TalkLimits.REASON)
                .value(values.get(REASON)));
  }

  private static void ties(Form form) {
    form.add(Field.of(MATERIAL, "Material").list("materials").maxLength(TalkLimits.TITLE));
    form.add(Field.of(COATING, "Coating").list("coatings").maxLength(TalkLimits.TITLE));
    form.add(
        choice(
            SOURCE,
            "Laser source",
            Stream.of(LaserSource.values())
                .map(s -> new Option(s.code(), s.label(), false))
                .toList()));
    form.add(
        choice(
            PROCESS,
            "Process",
            Stream.of(Process.values()).map(p -> new Option(p.code(), p.label(), false)).toList()));
    form.add(
        Field.of(MODEL, "Kind of machine")
            .hint("As its label says, if it matters.")
            .maxLength(TalkLimits.MACHINE_MODEL));
    form.add(Field.of(CONTROLLER, "Controller version").maxLength(TalkLimits.CONTROLLER_VERSION));
  }

  private static Field choice(String name, String label, List<Option> options) {
    return Field.of(name, label)
        .options(Stream.concat(Stream.of(NOTHING), options.stream()).toList());
  }

  static WrittenTalk written(TalkKind kind, SentForm sent) {
    if (kind == TalkKind.ANSWER) {
      return WrittenTalk.answer(sent.text(TEXT));
    }
    return new WrittenTalk(
        sent.text(TITLE),
        sent.text(TEXT),
        new Ties(
            sent.text(MATERIAL),
            sent.text(COATING),
            sent.text(SOURCE),
            sent.text(PROCESS),
            sent.text(MODEL),
            sent.text(CONTROLLER),
            id(sent.text(REPORT))));
  }

  /** What stands in the form of an entry that is to be changed. */
  static Map<String, String> values(WrittenTalk written, TieLabels labels) {
    Map<String, String> values = new HashMap<>();
    put(values, TITLE, written.title());
    put(values, TEXT, written.text());
    Ties ties = written.ties();
    put(values, MATERIAL, labels.material(ties.material()));
    put(values, COATING, labels.coating(ties.coating()));
    put(values, SOURCE, ties.source());
    put(values, PROCESS, ties.process());
    put(values, MODEL, ties.machineModel());
    put(values, CONTROLLER, ties.controllerVersion());
    put(values, REPORT, ties.report() == null ? null : ties.report().toString());
    return values;
  }

  private static void put(Map<String, String> values, String name, String value) {
    if (value != null) {
      values.put(name, value);
    }
  }

  /** The id in a hidden field; null for whatever is none. */
  static UUID id(String text) {
    try {
      return text == null ? null : UUID.fromString(text);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  /** The version in a hidden field; -1, which nothing has, for whatever is none. */
  static int version(SentForm sent) {
    String text = sent.text("version");
    return text != null && text.matches("\\d{1,9}") ? Integer.parseInt(text) : -1;
  }
}
