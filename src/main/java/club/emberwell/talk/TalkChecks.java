package club.emberwell.talk;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.remark.Severity;
import club.emberwell.report.ReportSource;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Reads entries as written into what is stored, or says what is at fault. */
@ApplicationScoped
class TalkChecks {
  private final CatalogService catalog;
  private final ReportSource reports;

  TalkChecks(CatalogService catalog, ReportSource reports) {
    this.catalog = catalog;
    this.reports = reports;
  }

  /**
   * The entry with its ties as slugs and codes.
   *
   * @throws EntryRefused with a remark for every field at fault
   */
  WrittenTalk read(EntryKind kind, WrittenTalk written) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String title = title(kind, written, in);
    int most = kind == EntryKind.COMMENT ? TalkLimits.COMMENT : TalkLimits.TEXT;
    String text = in.text("/text", written.text(), most, true);
    in.required("/text", written.text());
    Ties ties =
        EntryKind.REPLIES.contains(kind)
            ? untied(kind, written.ties(), in)
            : ties(written.ties(), in);
    Remarks.refuse(in.remarks());
    return new WrittenTalk(title, text, ties);
  }

  private static boolean isBlank(String text) {
    return text == null || text.isBlank();
  }

  private static String title(EntryKind kind, WrittenTalk written, FieldReader in) {
    if (EntryKind.REPLIES.contains(kind)) {
      if (!isBlank(written.title())) {
        in.add(Remark.error(RemarkId.TITLE_UNWANTED, "/title", a(kind) + " has no title."));
      }
      return null;
    }
    in.required("/title", written.title());
    String title = in.text("/title", written.title(), TalkLimits.TITLE, false);
    if (title != null && title.length() < TalkLimits.TITLE_LEAST) {
      String detail = "Please write a title of at least " + TalkLimits.TITLE_LEAST + " characters.";
      in.add(Remark.error(RemarkId.TEXT_TOO_SHORT, "/title", detail));
    }
    return title;
  }

  private static Ties untied(EntryKind kind, Ties ties, FieldReader in) {
    if (!ties.isEmpty()) {
      String above = kind == EntryKind.ANSWER ? "question" : "report";
      String detail = a(kind) + " is about what its " + above + " is about.";
      in.add(Remark.error(RemarkId.TIES_UNWANTED, "/ties", detail));
    }
    return Ties.NONE;
  }

  private static String a(EntryKind kind) {
    return kind == EntryKind.ANSWER ? "An answer" : "A comment";
  }

  private Ties ties(Ties written, FieldReader in) {
    Vocabulary vocabulary = catalog.vocabulary();
    return new Ties(
        term(TermKind.MATERIAL, "/ties/material", written.material(), vocabulary, in),
        term(TermKind.COATING, "/ties/coating", written.coating(), vocabulary, in),
        code(
            in.choice(
                "/ties/source",
                written.source(),
                LaserSource::of,
                LaserSource.values(),
                LaserSource::code)),
        code(
            in.choice(
                "/ties/process", written.process(), Process::of, Process.values(), Process::code)),
        in.text("/ties/machineModel", written.machineModel(), TalkLimits.MACHINE_MODEL, false),
        in.text(
            "/ties/controllerVersion",
            written.controllerVersion(),
            TalkLimits.CONTROLLER_VERSION,
            false),
        report(written.report(), in));
  }

  private static String code(Coded word) {
    return word == null ? null : word.code();
  }

  private static String term(
      TermKind kind, String pointer, String given, Vocabulary vocabulary, FieldReader in) {
    String text = in.text(pointer, given, TalkLimits.TITLE, false);
    if (text == null) {
      return null;
    }
    if (vocabulary.successor(kind, text).isPresent()) {
      return vocabulary.successor(kind, text).get().slug();
    }
    Reading<Term> reading = vocabulary.read(kind, text);
    if (reading.value().isEmpty()) {
      List<String> readings =
          reading.remarks().stream().flatMap(remark -> remark.readings().stream()).toList();
      String detail = "We do not know this word. Leave it out here and write it in the text.";
      in.add(new Remark(RemarkId.TERM_UNKNOWN, Severity.ERROR, pointer, detail, readings));
    }
    return reading.value().map(Term::slug).orElse(null);
  }

  private UUID report(UUID id, FieldReader in) {
    boolean there =
        id == null
            || reports.byIds(List.of(id)).stream()
                .anyMatch(report -> report.state() == EntryState.LIVE);
    if (!there) {
      in.add(Remark.error(RemarkId.REPORT_UNKNOWN, "/ties/report", "There is no such report."));
    }
    return id;
  }
}
