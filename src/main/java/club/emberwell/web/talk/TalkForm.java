package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.Reasons;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.search.query.Facet;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

/** The fields of a question, an answer, a notice or a comment, and what was typed into them. */
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

  private TalkForm() {}

  /**
   * A blank form.
   *
   * @param id the entry will have, so that sending twice posts once
   */
  static Form of(EntryKind kind, UUID id) {
    Form form = new Form().add(Field.of("id", "").hidden().value(id.toString()));
    boolean titled = !EntryKind.REPLIES.contains(kind);
    if (titled) {
      form.add(
          Field.of(TITLE, kind == EntryKind.QUESTION ? "Your question in one line" : "Title")
              .hint("Name the material and what happens: others find it by these words.")
              .maxLength(TalkLimits.TITLE)
              .required());
    }
    form.add(text(kind).lines().apart().required());
    if (titled) {
      ties(form);
    }
    return form;
  }

  private static Field text(EntryKind kind) {
    if (kind == EntryKind.COMMENT) {
      return Field.of(TEXT, "Your comment")
          .hint("Plain text, up to " + TalkLimits.COMMENT + " characters.")
          .maxLength(TalkLimits.COMMENT);
    }
    return Field.of(TEXT, kind == EntryKind.ANSWER ? "Your answer" : "Details")
        .hint("Markdown: **bold**, - lists, > quotes, `code`.")
        .maxLength(TalkLimits.TEXT);
  }

  /** The form of an entry that is to be changed, with a reason readers of the history see. */
  static Form edit(TalkEntry entry, TieLabels labels) {
    return of(entry.kind(), entry.id())
        .changing(entry.kind().code(), entry.version(), entry.path())
        .fill(values(entry.written(), labels))
        .add(
            Field.of(REASON, "Reason (optional)")
                .hint("Shown in the history.")
                .maxLength(Reasons.MOST)
                .aside());
  }

  private static void ties(Form form) {
    form.add(Field.of(MATERIAL, "Material").list("materials").maxLength(TalkLimits.TITLE));
    form.add(Field.of(COATING, "Coating").list("coatings").maxLength(TalkLimits.TITLE));
    form.add(choice(SOURCE, "Type of laser").choices(LaserSource.values(), LaserSource::label));
    form.add(choice(PROCESS, "Process").choices(Process.values(), Process::label));
    form.add(
        Field.of(MODEL, "Machine model")
            .hint("From its label, if it matters.")
            .maxLength(TalkLimits.MACHINE_MODEL));
    form.add(
        Field.of(CONTROLLER, "Firmware or software version")
            .maxLength(TalkLimits.CONTROLLER_VERSION));
    form.add(Field.of(REPORT, "").hidden());
  }

  private static Field choice(String name, String label) {
    return Field.of(name, label).folded().choice("", "any");
  }

  static WrittenTalk written(EntryKind kind, SentForm sent) {
    if (EntryKind.REPLIES.contains(kind)) {
      return WrittenTalk.untitled(sent.text(TEXT));
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
            sent.id(REPORT)));
  }

  /** What stands in the form of an entry that is to be changed. */
  private static Map<String, String> values(WrittenTalk written, TieLabels labels) {
    Map<String, String> values = new HashMap<>();
    put(values, TITLE, written.title());
    put(values, TEXT, written.text());
    Ties ties = written.ties();
    put(values, MATERIAL, labels.label(Facet.MATERIAL, ties.material()));
    put(values, COATING, labels.label(Facet.COATING, ties.coating()));
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
}
