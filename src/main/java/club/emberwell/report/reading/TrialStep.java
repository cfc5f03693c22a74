package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.Plausibility;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The trials: settings, what follows from them, what looks implausible, and the judgement. */
final class TrialStep implements ReportInterpreter.Step {
  static final TrialStep JUDGED = new TrialStep(true);

  /** Of settings that are kept: how they came out is not asked. */
  static final TrialStep NOT_JUDGED = new TrialStep(false);

  private final boolean judged;

  private TrialStep(boolean judged) {
    this.judged = judged;
  }

  @Override
  public void read(Draft draft) {
    List<WrittenTrial> written = draft.written.trials();
    if (written == null || written.isEmpty()) {
      draft.in.add(Remark.error(RemarkId.REQUIRED, "/settings", "A report needs settings."));
      return;
    }
    if (written.size() > ReadingLimits.TRIALS) {
      String detail = "At most " + ReadingLimits.TRIALS + " tests fit in a report.";
      draft.in.add(Remark.error(RemarkId.TOO_MANY, "/trials", detail));
      return;
    }
    boolean plain = draft.written.plain();
    Set<List<Integer>> places = new HashSet<>();
    for (int i = 0; i < written.size(); i++) {
      String at = plain ? "" : "/trials/" + i;
      if (written.get(i) == null) {
        draft.in.add(Remark.error(RemarkId.REQUIRED, at, "A test is missing here."));
        continue;
      }
      place(draft.in, written.get(i), at, plain, places);
      draft.trials.add(trial(draft, written.get(i), at));
    }
  }

  private static void place(
      FieldReader in, WrittenTrial trial, String at, boolean plain, Set<List<Integer>> places) {
    if (plain) {
      return;
    }
    boolean fits = side(in, trial.row(), at + "/row") & side(in, trial.column(), at + "/column");
    if (fits && !places.add(List.of(trial.row(), trial.column()))) {
      in.add(
          Remark.error(RemarkId.PLACE_TAKEN, at, "Two tests are in the same place of the grid."));
    }
  }

  private static boolean side(FieldReader in, Integer value, String at) {
    if (value == null) {
      in.add(Remark.error(RemarkId.REQUIRED, at, "This field is needed."));
      return false;
    }
    if (value < 0 || value >= ReadingLimits.GRID_SIDE) {
      String detail = "A grid's places count from 0 to " + (ReadingLimits.GRID_SIDE - 1) + ".";
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, at, detail));
      return false;
    }
    return true;
  }

  private TrialSnapshot trial(Draft draft, WrittenTrial written, String at) {
    Settings settings =
        SettingsReader.read(draft.in, at + "/settings", written.settings(), draft.laser);
    Effect effect = effect(draft.in, at + "/effect", written.effect());
    Integer quality = quality(draft.in, at + "/quality", written.quality(), effect);
    List<String> defects = defects(draft, at + "/defects", written.defects());
    Derived derived = derive(draft, settings, at);
    return new TrialSnapshot(
        written.row(), written.column(), settings, derived, effect, quality, defects);
  }

  private Effect effect(FieldReader in, String at, String given) {
    if (judged) {
      in.required(at, given);
    }
    return in.choice(at, given, Effect::of, Effect.values(), Effect::code);
  }

  private static Derived derive(Draft draft, Settings settings, String at) {
    if (draft.laser == null || draft.work.process() == null) {
      return Derived.NOTHING;
    }
    if (draft.work.process().doseKind() == DoseKind.AREAL && settings.lineSpacingMm() == null) {
      String detail = "Without the line spacing we cannot calculate the energy per area.";
      draft.in.add(Remark.warning(RemarkId.SPACING_MISSING, at + "/settings/lineSpacing", detail));
    }
    settings.values().keySet().stream()
        .filter(setting -> !setting.appliesTo(draft.work.process()))
        .map(setting -> elsewhere(setting, at, draft.work.process()))
        .forEach(draft.in::add);
    Derived derived = Dose.derive(draft.laser, draft.work.process(), settings);
    Plausibility.check(draft.laser, draft.work.process(), settings, derived).stream()
        .filter(remark -> !remark.field().startsWith("/laser"))
        .map(remark -> remark.at(at + remark.field()))
        .forEach(draft.in::add);
    return derived;
  }

  private static Remark elsewhere(Setting setting, String at, Process process) {
    String detail = "%s says nothing about work of this kind: %s.";
    return Remark.info(
        RemarkId.SETTING_NOT_OF_PROCESS,
        at + "/settings/" + setting.code(),
        detail.formatted(setting.label(), process.label().toLowerCase(Locale.ROOT)));
  }

  private static Integer quality(FieldReader in, String at, Integer given, Effect effect) {
    if (given == null) {
      return null;
    }
    if (given < 1 || given > ReadingLimits.BEST_QUALITY) {
      String detail = "Give a quality from 1 to " + ReadingLimits.BEST_QUALITY + ".";
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, at, detail));
      return null;
    }
    if (effect != null && effect != Effect.RIGHT) {
      String detail = "Give a quality only if the result was right.";
      in.add(Remark.error(RemarkId.QUALITY_WITHOUT_RIGHT, at, detail));
      return null;
    }
    return given;
  }

  private static List<String> defects(Draft draft, String at, List<String> given) {
    if (given == null) {
      return List.of();
    }
    if (given.size() > ReadingLimits.DEFECTS) {
      String detail = "At most " + ReadingLimits.DEFECTS + " defects fit here.";
      draft.in.add(Remark.error(RemarkId.TOO_MANY, at, detail));
      return List.of();
    }
    Set<String> slugs = new LinkedHashSet<>();
    for (int i = 0; i < given.size(); i++) {
      String text = draft.in.text(at + "/" + i, given.get(i), ReadingLimits.WORDS, false);
      if (text != null) {
        defect(draft, at + "/" + i, text, slugs);
      }
    }
    return new ArrayList<>(slugs);
  }

  private static void defect(Draft draft, String at, String text, Set<String> slugs) {
    Reading<Term> reading = draft.catalog.vocabulary().read(TermKind.DEFECT, text);
    if (reading.value().isPresent()) {
      slugs.add(reading.value().get().slug());
      return;
    }
    List<String> known =
        draft.catalog.vocabulary().terms(TermKind.DEFECT).stream().map(Term::slug).toList();
    String detail = "Choose from: " + String.join(", ", known) + ".";
    draft.in.add(Remark.error(RemarkId.DEFECT_UNKNOWN, at, detail));
  }
}
