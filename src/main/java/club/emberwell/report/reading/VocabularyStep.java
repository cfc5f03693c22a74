package club.emberwell.report.reading;

import club.emberwell.catalog.ColourNaming;
import club.emberwell.catalog.ColourNaming.Named;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import club.emberwell.report.reading.WorkValue.Shape;
import java.util.Optional;

/**
 * Words of the vocabularies. What matches nothing or two things stays unresolved: a note, not an
 * error, and a moderator files it later.
 */
public final class VocabularyStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    WrittenWork written = draft.written.work();
    for (WorkProperty property : WorkProperty.of(Shape.WORD)) {
      WorkStep.needed(draft.in, property, written);
      draft.work = draft.work.with(property, filed(draft, property, written.text(property)));
    }
  }

  private static Filed filed(Draft draft, WorkProperty property, String given) {
    String pointer = "/" + property.code();
    TermKind kind = property.value().vocabulary();
    String text = draft.in.text(pointer, given, property.value().longest(), false);
    if (text == null) {
      return Filed.NOTHING;
    }
    Reading<Term> reading = draft.catalog.vocabulary().read(kind, text);
    if (reading.value().isPresent()) {
      reading.at(pointer).remarks().forEach(draft.in::add);
      return new Filed(reading.value().get().slug(), text);
    }
    if (kind == TermKind.COLOUR) {
      Optional<Named> named = draft.catalog.colours().name(text);
      if (named.isPresent()) {
        draft.in.add(nearest(pointer, named.get()));
        return new Filed(named.get().term().slug(), text);
      }
    }
    reading.at(pointer).remarks().stream().map(r -> r.as(Severity.INFO)).forEach(draft.in::add);
    return new Filed(null, text);
  }

  private static Remark nearest(String pointer, Named named) {
    String detail = "Filed as " + named.term().label() + ", the nearest colour we know.";
    return Remark.info(RemarkId.COLOUR_NAMED, pointer, detail);
  }

  /** What a written word means now; the same as in {@link #read}, without remarks. */
  public static String slug(
      Vocabulary vocabulary, ColourNaming colours, TermKind kind, String text) {
    Optional<Term> term = vocabulary.resolve(kind, text).term();
    if (term.isEmpty() && kind == TermKind.COLOUR) {
      term = colours.name(text).map(Named::term);
    }
    return term.map(Term::slug).orElse(null);
  }
}
