package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What a moderator says about a term.
 *
 * @param parent slug or null
 * @param respondsAlike whether everything below it responds as it does
 * @param note or null
 * @param hex #rrggbb, colours only, or null
 */
public record TermDraft(
    String label,
    String parent,
    boolean respondsAlike,
    String note,
    String hex,
    boolean deprecated) {
  /** What a term says now. */
  public static TermDraft of(Term term) {
    return new TermDraft(
        term.label(),
        term.parent(),
        term.respondsAlike(),
        term.note(),
        term.hex(),
        term.deprecated());
  }

  private static final Pattern HEX = Pattern.compile("#[0-9a-f]{6}");

  public TermDraft {
    label = label == null ? "" : label.strip();
    parent = blankToNull(parent);
    note = blankToNull(note);
    hex = blankToNull(hex);
  }

  private static String blankToNull(String text) {
    return text == null || text.isBlank() ? null : text.strip();
  }

  /** The same below another term. */
  public TermDraft below(String other) {
    return new TermDraft(label, other, respondsAlike, note, hex, deprecated);
  }

  /** Refuses what could not be shown or hung into the tree. */
  void check(TermKind kind, String slug, Vocabulary vocabulary) {
    List<Remark> remarks = new ArrayList<>();
    if (vocabulary.folding().fold(label).isEmpty() || label.length() > CatalogLimits.TEXT) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_MISSING,
              "/label",
              "A label has letters or digits and at most " + CatalogLimits.TEXT + " characters."));
    }
    if (note != null && note.length() > CatalogLimits.REASON) {
      remarks.add(
          Remark.error(
              RemarkId.NOTE_TOO_LONG,
              "/note",
              "A note has at most " + CatalogLimits.REASON + " characters."));
    }
    if (hex != null && (kind != TermKind.COLOUR || !HEX.matcher(hex).matches())) {
      remarks.add(
          Remark.error(
              RemarkId.HEX_UNREADABLE, "/hex", "Only colours have a hex code, like #1b2545."));
    }
    if (parent != null) {
      checkParent(kind, slug, vocabulary, remarks);
    }
    Remarks.refuse(remarks);
  }

  private void checkParent(
      TermKind kind, String slug, Vocabulary vocabulary, List<Remark> remarks) {
    boolean living = vocabulary.term(kind, parent).filter(t -> t.replacedBy() == null).isPresent();
    if (!living) {
      remarks.add(
          Remark.error(
              RemarkId.PARENT_UNKNOWN, "/parent", "There is no " + parent + " in the list."));
    } else if (vocabulary.path(kind, parent).stream().anyMatch(t -> t.slug().equals(slug))) {
      remarks.add(
          Remark.error(
              RemarkId.PARENT_BELOW, "/parent", "The wider term is already below this one."));
    }
  }
}
