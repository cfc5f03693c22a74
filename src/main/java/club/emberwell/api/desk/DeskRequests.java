package club.emberwell.api.desk;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.TermDraft;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.undo.Undos.Wanted;
import club.emberwell.entry.Decision;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** The shapes of what the desk is sent. */
final class DeskRequests {
  private DeskRequests() {}

  /** A deed that needs nothing said. */
  @Schema(name = "EmptyRequest")
  record Nothing() {}

  /** A deed that needs nothing but a reason. */
  @Schema(name = "ReasonRequest")
  record Why(String reason) {}

  /**
   * @param action approve, hold, remove or restore
   */
  @Schema(
      name = "DecisionRequest",
      requiredProperties = {"action"})
  record Decide(@Schema(implementation = Decision.class) String action, String reason) {}

  /**
   * @param kind report, question, answer, notice or photo
   * @param reason code of a flag reason
   */
  @Schema(
      name = "FlagRequest",
      requiredProperties = {"kind", "id", "reason"})
  record Raise(
      @Schema(enumeration = {"report", "question", "answer", "notice", "comment", "photo"})
          String kind,
      UUID id,
      @Schema(implementation = FlagReason.class) String reason,
      String note) {}

  /**
   * @param upheld whether the flags were right
   * @param action what happens to the item besides, or null
   */
  @Schema(
      name = "SettleFlagsRequest",
      requiredProperties = {"upheld"})
  record Settle(
      Boolean upheld, @Schema(implementation = Decision.class) String action, String reason) {}

  /**
   * @param id made by the client; the same one twice is one undo; not needed for a preview
   * @param since a time in ISO 8601
   */
  @Schema(
      name = "UndoRequest",
      requiredProperties = {"since"})
  record Undo(
      UUID id,
      UUID member,
      @Schema(implementation = RuleCode.class) String rule,
      String since,
      String reason) {
    Wanted wanted() {
      return new Wanted(member, rule, DeskTimes.read("/since", since));
    }
  }

  /**
   * @param mode off, note or hold
   */
  @Schema(
      name = "RuleRequest",
      requiredProperties = {"mode", "threshold"})
  record SetRule(
      @Schema(enumeration = {"off", "note", "hold"}) String mode,
      Double threshold,
      Integer minutes) {}

  @Schema(
      name = "FileWordRequest",
      requiredProperties = {"term"})
  record FileWord(String term, String reason) {}

  @Schema(
      name = "TermRequest",
      requiredProperties = {"value", "label"})
  record NewTerm(
      String value,
      String label,
      String parent,
      Boolean respondsAlike,
      String note,
      String hex,
      String reason) {
    TermDraft draft() {
      return new TermDraft(label, parent, isTrue(respondsAlike), note, hex, false);
    }
  }

  @Schema(
      name = "TermEdit",
      requiredProperties = {"label", "reason"})
  record EditTerm(
      String label,
      String parent,
      Boolean respondsAlike,
      String note,
      String hex,
      Boolean deprecated,
      String reason) {
    TermDraft draft() {
      return new TermDraft(label, parent, isTrue(respondsAlike), note, hex, isTrue(deprecated));
    }
  }

  private static boolean isTrue(Boolean given) {
    return Boolean.TRUE.equals(given);
  }

  @Schema(
      name = "SpellingRequest",
      requiredProperties = {"text"})
  record Spelling(String text, Boolean ambiguous, String reason) {}

  @Schema(
      name = "MergeRequest",
      requiredProperties = {"into", "reason"})
  record Merge(String into, String reason) {}

  /**
   * @param base version of the caution it is based on; 0 or none for a new one
   */
  @Schema(
      name = "CautionProposalRequest",
      requiredProperties = {"caution", "reason"})
  record Propose(CautionRule caution, Integer base, String reason) {}

  @Schema(
      name = "CautionVerdictRequest",
      requiredProperties = {"accept"})
  record Verdict(Boolean accept, String reason) {}

  static TermKind kind(String code) {
    return Coded.of(TermKind.class, code).orElseThrow(() -> new EntryUnknown("vocabulary"));
  }
}
