package club.emberwell.web.grid;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.result.Place;
import club.emberwell.grid.result.Results;
import club.emberwell.grid.result.WrittenResults;
import club.emberwell.grid.result.WrittenResults.WrittenCell;
import club.emberwell.laser.Effect;
import club.emberwell.report.reading.ReadingLimits;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The fields by which a grid is judged, one for each cell and thing to say of it. */
final class ResultForm {
  static final String EFFECT = "effects.";
  static final String QUALITY = "quality.";
  static final String DEFECTS = "defects.";
  private static final String BEST = "best";
  private static final String NOTES = "notes";
  private static final String CELLS = "cells.";

  private ResultForm() {}

  /**
   * The form with what is stored.
   *
   * @param sent what came in, null where nothing did
   */
  static Form of(Results results, Vocabulary vocabulary, CellText text, SentForm sent) {
    GridPlan plan = results.plan();
    Form form = new Form();
    form.add(Field.newId());
    Field best = Field.of(BEST, "Best test").folded().choice("", "None marked");
    for (GridPlan.Cell cell : plan.cells()) {
      if (cell.burned()) {
        String at = cell.row() + "." + cell.column();
        String name = text.name(cell);
        form.add(
            Field.of(EFFECT + at, name)
                .choice("", "Not judged")
                .choices(Effect.values(), Effect::label));
        form.add(quality(at, name));
        form.add(Field.of(DEFECTS + at, "Defects: " + name).list("defect-words"));
        best.choice(at, name);
      }
    }
    form.add(best);
    form.add(Field.of(NOTES, "Notes").maxLength(WorkProperty.NOTES.value().longest()).lines());
    form.add(Field.of("showPhoto", "Show the photo with the result"));
    form.fill(stored(results, vocabulary));
    if (sent != null) {
      List<String> told = told(sent, plan);
      form.named(name -> named(name, told));
    }
    return form.changing("results", results.grid().version(), "/grids/" + results.grid().id());
  }

  private static Field quality(String at, String name) {
    Field quality = Field.of(QUALITY + at, "Quality: " + name).folded().choice("", "Not rated");
    for (int i = 1; i <= ReadingLimits.BEST_QUALITY; i++) {
      quality.choice(Integer.toString(i), i + " of " + ReadingLimits.BEST_QUALITY);
    }
    return quality;
  }

  private static Map<String, String> stored(Results results, Vocabulary vocabulary) {
    Map<String, String> values = new HashMap<>();
    for (TrialSnapshot trial : results.judged()) {
      String at = trial.row() + "." + trial.column();
      values.put(EFFECT + at, trial.effect().code());
      values.put(QUALITY + at, trial.quality() == null ? "" : trial.quality().toString());
      values.put(
          DEFECTS + at,
          trial.defects().stream()
              .map(slug -> vocabulary.term(TermKind.DEFECT, slug).map(t -> t.label()).orElse(slug))
              .collect(Collectors.joining(", ")));
    }
    results.best().ifPresent(best -> values.put(BEST, best.row() + "." + best.column()));
    String notes =
        results.report() == null
            ? results.grid().written().work().text(WorkProperty.NOTES)
            : results.report().written().work().text(WorkProperty.NOTES);
    values.put(NOTES, notes == null ? "" : notes);
    return values;
  }

  /** What of a remark's field the page calls otherwise: it has the cells one by one. */
  private static String named(String name, List<String> told) {
    if (!name.startsWith(CELLS)) {
      return name;
    }
    String[] parts = name.split("\\.");
    int cell = Integer.parseInt(parts[1]);
    boolean known = cell < told.size() && parts.length > 2;
    return known ? parts[2] + "." + told.get(cell) : name;
  }

  /** What was sent, to be judged against the plan. */
  static WrittenResults written(SentForm sent, GridPlan plan) {
    List<List<String>> effects = new ArrayList<>();
    for (int row = 0; row < plan.rows(); row++) {
      List<String> line = new ArrayList<>();
      for (int column = 0; column < plan.columns(); column++) {
        line.add(sent.text(EFFECT + row + "." + column));
      }
      effects.add(line);
    }
    List<WrittenCell> cells = new ArrayList<>();
    for (String at : told(sent, plan)) {
      Place place = place(at);
      cells.add(
          new WrittenCell(
              place.row(), place.column(), sent.number(QUALITY + at), defects(sent, DEFECTS + at)));
    }
    return new WrittenResults(
        effects, place(sent.text(BEST)), cells, sent.text(NOTES), sent.flag("showPhoto"));
  }

  /** Of which cells more is said, in the order in which it is sent on. */
  private static List<String> told(SentForm sent, GridPlan plan) {
    return plan.cells().stream()
        .map(cell -> cell.row() + "." + cell.column())
        .filter(at -> sent.text(QUALITY + at) != null || sent.text(DEFECTS + at) != null)
        .toList();
  }

  /** Null for whatever is none. */
  private static Place place(String at) {
    if (at == null || !at.matches("\\d{1,3}\\.\\d{1,3}")) {
      return null;
    }
    String[] parts = at.split("\\.");
    return new Place(Integer.valueOf(parts[0]), Integer.valueOf(parts[1]));
  }

  private static List<String> defects(SentForm sent, String name) {
    String text = sent.text(name);
    return text == null
        ? null
        : List.of(text.split("\\s*,\\s*")).stream().filter(d -> !d.isBlank()).toList();
  }
}
