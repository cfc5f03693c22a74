package club.emberwell.api.desk;

import club.emberwell.api.view.ItemJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.Times;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.flag.Flagged;
import club.emberwell.desk.home.DeskHome;
import club.emberwell.desk.home.People;
import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Verdict;
import club.emberwell.member.Role;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The shapes of what the desk answers. */
final class DeskJson {
  private DeskJson() {}

  /** An entry as the desk's lists have it. */
  @Schema(name = "DeskItem")
  record ItemView(
      @JsonUnwrapped ItemJson item,
      EntryState state,
      MemberJson member,
      @JsonUnwrapped Times times) {
    static ItemView of(Entry item) {
      return new ItemView(
          ItemJson.of(item),
          item.state(),
          MemberJson.of(item.author().id(), item.author().handle()),
          new Times(item.times().created(), item.times().updated()));
    }
  }

  /**
   * What was decided about an item.
   *
   * @param by the moderator; left out where a rule decided
   * @param rule left out where a moderator did
   */
  @Schema(name = "EntryDecision")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record DecisionView(
      ItemJson item,
      Decision action,
      @Nullable MemberJson by,
      @Nullable String rule,
      @Nullable String reason,
      Instant at) {
    static DecisionView of(Verdict d) {
      return new DecisionView(
          ItemJson.of(d.entry()),
          d.action(),
          d.moderator() == null ? null : MemberJson.of(d.moderator().id(), d.moderator().handle()),
          d.rule(),
          d.reason(),
          d.at());
    }
  }

  /**
   * Somebody's word that something is wrong with an item.
   *
   * @param member who raised it
   */
  @Schema(name = "Flag")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FlagView(
      UUID id,
      ItemJson item,
      MemberJson member,
      FlagReason reason,
      @Nullable String note,
      Instant createdAt,
      @JsonUnwrapped Settlement settlement) {

    /**
     * What came of it.
     *
     * @param state open, withdrawn, upheld or dismissed
     * @param outcome what the moderator said; left out while it is open
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Settlement(
        @Schema(enumeration = {"open", "withdrawn", "upheld", "dismissed"}) String state,
        @Nullable Instant decidedAt,
        @Nullable String outcome) {}

    static FlagView of(Flag f) {
      return new FlagView(
          f.id(),
          ItemJson.of(f.entry()),
          MemberJson.of(f.raiser().id(), f.raiser().handle()),
          f.reason(),
          f.note(),
          f.createdAt(),
          new Settlement(f.state(), f.decidedAt(), f.outcome()));
    }
  }

  /**
   * An item with open flags.
   *
   * @param flags how many members flagged it
   * @param oldestAt when the first of them did
   * @param forOwners whether one of them is an owner's to settle
   */
  @Schema(name = "FlaggedItem")
  record FlaggedView(
      ItemView item, int flags, List<FlagReason> reasons, Instant oldestAt, boolean forOwners) {
    static FlaggedView of(Flagged f) {
      return new FlaggedView(
          ItemView.of(f.item()), f.flags(), f.reasons(), f.oldest(), f.forOwners());
    }
  }

  /**
   * A rule as it is set.
   *
   * @param detail what it notices
   * @param mode off, note or hold
   * @param minutes the time it looks back; 0 where it does not
   * @param updatedAt left out while it is as delivered
   */
  @Schema(name = "Rule")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record RuleView(
      RuleCode code,
      String label,
      String detail,
      @Schema(enumeration = {"off", "note", "hold"}) String mode,
      double threshold,
      int minutes,
      int version,
      @Nullable Instant updatedAt) {
    static RuleView of(Rule r) {
      return new RuleView(
          r.code(),
          r.code().label(),
          r.code().says(),
          r.mode(),
          r.threshold(),
          r.minutes(),
          r.version(),
          r.changedAt());
    }
  }

  /**
   * What a rule noticed about an item.
   *
   * @param mode note or hold: what the rule did
   * @param state open, seen or undone
   */
  @Schema(name = "RuleNote")
  record NoteView(
      long id,
      RuleCode rule,
      ItemView item,
      String detail,
      @Schema(enumeration = {"note", "hold"}) String mode,
      @Schema(enumeration = {"open", "seen", "undone"}) String state,
      Instant createdAt) {
    static NoteView of(RuleNote n) {
      return new NoteView(
          n.id(), n.rule(), ItemView.of(n.item()), n.detail(), n.mode(), n.state(), n.at());
    }
  }

  /**
   * A member as moderators see them: no address.
   *
   * @param state waiting, active, banned or erased
   * @param trusted whether their entries need no first look
   * @param entries how many they have posted and not withdrawn
   * @param lastSeenAt when they were last signed in or posted
   */
  @Schema(name = "DeskMember")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record PersonView(
      @JsonUnwrapped MemberJson member,
      @Schema(implementation = Role.class) String role,
      @Schema(enumeration = {"waiting", "active", "banned", "erased"}) String state,
      boolean trusted,
      long entries,
      @Nullable Instant lastSeenAt,
      Instant createdAt) {
    static PersonView of(People.Person p) {
      return new PersonView(
          MemberJson.of(p.id(), p.handle()),
          p.role(),
          p.status(),
          p.trusted(),
          p.entries(),
          p.lastSeen(),
          p.joined());
    }
  }

  /**
   * The first screen. Counts stop at 100, which stands for "more than 99".
   *
   * @param oldestAt since when the oldest item waits; left out where none does
   * @param late whether it waits longer than anything should
   */
  @Schema(name = "Desk")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record HomeView(
      DeskHome.Counts counts,
      @Nullable Instant oldestAt,
      boolean late,
      List<ItemView> waiting,
      List<FlaggedView> flagged,
      List<NoteView> ruleNotes) {
    static HomeView of(DeskHome home) {
      return new HomeView(
          home.counts(),
          home.oldest(),
          home.late(),
          home.waiting().stream().map(ItemView::of).toList(),
          home.flagged().stream().map(FlaggedView::of).toList(),
          home.notes().stream().map(NoteView::of).toList());
    }
  }
}
