package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.CautionSource;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Whether a caution a moderator wrote can stand. */
final class CautionChecks {
  private static final Set<String> CONFIDENCES =
      Set.of("read", "second-hand", "memory", "judgement");
  private static final Set<String> PROCESSES =
      Stream.of(Process.values()).map(Process::code).collect(Collectors.toSet());
  private static final Set<String> SOURCES =
      Stream.of(LaserSource.values()).map(LaserSource::code).collect(Collectors.toSet());

  private final List<Remark> remarks = new ArrayList<>();

  private CautionChecks() {}

  /** Refuses what is incomplete, names unknown terms or comes without a source. */
  static void check(CautionRule rule, Vocabulary vocabulary) {
    CautionChecks checks = new CautionChecks();
    checks.said("/agent", rule.agent());
    checks.said("/hazard", rule.hazard());
    checks.said("/claim", rule.claim());
    checks.said("/advice", rule.advice());
    if (rule.id() == null || !rule.id().matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      checks.add(RemarkId.ID_UNREADABLE, "/id", "An id is lower-case words with dashes.");
    }
    if (rule.weight() == null) {
      checks.add(RemarkId.CLASS_MISSING, "/class", "Choose ban, care or note.");
    }
    checks.handling(rule.handling());
    checks.evidence(rule.evidence());
    checks.scope(rule.scope(), vocabulary);
    Remarks.refuse(checks.remarks);
  }

  /** Refuses an edit by which something prohibited would no longer be. */
  static void checkNotWeaker(CautionRule was, CautionRule is) {
    if (was.isBan() && !(is.isBan() && is.scope().equals(was.scope()))) {
      throw new EntryRefused(
          RemarkId.PROHIBITION_LIFTED,
          "/class",
          "You cannot change the class or scope of a ban. Propose to remove it, and add another.");
    }
  }

  private void handling(CautionRule.Handling handling) {
    lines("/givesOff", handling.givesOff());
    lines("/never", handling.never());
    lines("/findOut", handling.findOut());
    if (handling.extraction() != null) {
      said("/extraction", handling.extraction());
    }
  }

  private void lines(String pointer, List<String> lines) {
    if (lines.size() > CatalogLimits.CAUTION_LINES) {
      add(
          RemarkId.TEXT_MISSING,
          pointer,
          "Write at most " + CatalogLimits.CAUTION_LINES + " lines.");
    }
    lines.forEach(line -> said(pointer, line));
  }

  private void sources(List<CautionSource> sources) {
    for (int i = 0; i < sources.size(); i++) {
      String pointer = "/evidence/sources/" + i;
      said(pointer + "/name", sources.get(i).name());
      said(pointer + "/jurisdiction", sources.get(i).jurisdiction());
      if (sources.get(i).kind() == null) {
        add(RemarkId.SOURCE_MISSING, pointer + "/kind", "Say what kind of source it is.");
      }
    }
  }

  private void evidence(CautionEvidence evidence) {
    if (evidence == null) {
      add(RemarkId.SOURCE_MISSING, "/evidence", "A caution needs a source.");
      return;
    }
    if (evidence.source() == null || evidence.source().isBlank()) {
      add(
          RemarkId.SOURCE_MISSING,
          "/evidence/source",
          "A caution needs a source; \"common practice, no source\" is one that is honest.");
    } else {
      said("/evidence/source", evidence.source());
    }
    sources(evidence.sources());
    said("/evidence/jurisdiction", evidence.jurisdiction());
    if (evidence.confidence() == null || !CONFIDENCES.contains(evidence.confidence())) {
      add(RemarkId.CONFIDENCE_UNKNOWN, "/evidence/confidence", "Say one of " + CONFIDENCES + ".");
    }
    if (evidence.disputed()) {
      said("/evidence/dispute", evidence.dispute());
    }
  }

  private void scope(CautionScope scope, Vocabulary vocabulary) {
    if (scope == null) {
      add(RemarkId.SCOPE_MISSING, "/scope", "Enter what the caution is about.");
      return;
    }
    known("/scope/materials", scope.materials(), vocabulary, TermKind.MATERIAL);
    known("/scope/coatings", scope.coatings(), vocabulary, TermKind.COATING);
    among("/scope/processes", scope.processes(), PROCESSES);
    among("/scope/sources", scope.sources(), SOURCES);
    if (scope.thicknessAboveMm() != null && !(scope.thicknessAboveMm() >= 0)) {
      add(
          RemarkId.THICKNESS_NEGATIVE,
          "/scope/thicknessAboveMm",
          "A thickness cannot be negative.");
    }
  }

  private void known(String pointer, List<String> slugs, Vocabulary vocabulary, TermKind kind) {
    slugs.stream()
        .filter(slug -> vocabulary.term(kind, slug).isEmpty())
        .forEach(
            slug -> add(RemarkId.TERM_UNKNOWN, pointer, "There is no " + slug + " in the list."));
  }

  private void among(String pointer, List<String> codes, Set<String> known) {
    codes.stream()
        .filter(code -> !known.contains(code))
        .forEach(code -> add(RemarkId.CODE_UNKNOWN, pointer, "There is no " + code + "."));
  }

  private void said(String pointer, String text) {
    if (text == null || text.isBlank() || text.length() > CatalogLimits.REASON) {
      add(RemarkId.TEXT_MISSING, pointer, "Write 1 to " + CatalogLimits.REASON + " characters.");
    }
  }

  private void add(RemarkId id, String pointer, String detail) {
    remarks.add(Remark.error(id, pointer, detail));
  }
}
