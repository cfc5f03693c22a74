package club.emberwell.api.desk;

import club.emberwell.api.view.FieldChangeJson;
import club.emberwell.api.view.KeyJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.Times;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogChange;
import club.emberwell.catalog.store.MergePreview;
import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.desk.word.MergeEffects;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The shapes of the care of words and cautions. */
final class WordsJson {
  private WordsJson() {}

  /**
   * A term as the desk has it.
   *
   * @param value stable, never renamed
   * @param parent value of the wider term
   * @param hex colours only
   */
  @Schema(name = "DeskTerm")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record TermView(
      TermKind kind,
      String value,
      @JsonUnwrapped Term.Words words,
      @Nullable String parent,
      boolean respondsAlike,
      @Nullable String hex,
      @JsonUnwrapped Term.Standing standing) {
    static TermView of(Term t) {
      return new TermView(
          t.kind(), t.slug(), t.words(), t.parent(), t.respondsAlike(), t.hex(), t.standing());
    }
  }

  /**
   * What a change touched.
   *
   * @param version of the whole vocabulary from now on
   * @param terms whose meaning, place or cautions changed
   * @param spellings that mean something else than before
   */
  @Schema(name = "VocabularyChange")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ChangeView(
      long version, @Nullable TermKind kind, Set<String> terms, Set<String> spellings) {
    ChangeView {
      // in one order, whatever a set has
      terms = new TreeSet<>(terms);
      spellings = new TreeSet<>(spellings);
    }

    static ChangeView of(CatalogChange c) {
      return new ChangeView(c.version(), c.kind(), c.slugs(), c.spellings());
    }
  }

  /**
   * A version of a term or a caution.
   *
   * @param by left out where the data files brought it
   * @param before the whole of it; left out where it was added
   */
  @Schema(name = "VocabularyVersion")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record VersionView(
      int version,
      @Nullable MemberJson by,
      Instant at,
      @Nullable String reason,
      List<FieldChangeJson> changes,
      @Nullable Map<String, Object> before,
      @Nullable Map<String, Object> after) {
    static VersionView of(VocabularyCare.Change change) {
      var revision = change.revision();
      return new VersionView(
          revision.version(),
          revision.by() == null ? null : MemberJson.of(revision.by(), change.by()),
          revision.at(),
          revision.why(),
          FieldChangeJson.all(change.differences()),
          revision.before(),
          revision.after());
    }
  }

  /**
   * A word that matched no term, or several.
   *
   * @param written as it was first written
   * @param count how often
   * @param state waiting, filed or dismissed
   * @param term it is filed to; left out else
   * @param times when it was first and last written
   */
  @Schema(name = "UnfiledWord")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record UnfiledView(
      UUID id,
      TermKind kind,
      String written,
      int count,
      @Schema(enumeration = {"waiting", "filed", "dismissed"}) String state,
      @Nullable String term,
      @JsonUnwrapped Times times) {
    static UnfiledView of(Unfiled u) {
      return new UnfiledView(
          u.id(),
          u.kind(),
          u.written(),
          u.count(),
          u.state(),
          u.filedTo(),
          new Times(u.firstSeen(), u.lastSeen()));
    }
  }

  /**
   * A caution with its standing.
   *
   * @param origin shared (from the data files) or club
   * @param removal left out where nobody asked for it
   */
  @Schema(name = "DeskCaution")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record StandingView(
      CautionRule caution,
      String origin,
      int version,
      boolean removed,
      @Nullable RemovalView removal) {}

  /** Who wants a caution removed, and why. */
  @Schema(name = "CautionRemoval")
  record RemovalView(MemberJson by, @Nullable String reason, Instant at) {}

  /**
   * A caution as somebody wants it to read.
   *
   * @param base version of the caution it is based on; 0 for a new one
   */
  @Schema(name = "CautionProposal")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ProposalView(
      UUID id,
      int base,
      CautionRule caution,
      String reason,
      MemberJson member,
      Instant createdAt,
      @JsonUnwrapped CautionProposal.Standing standing) {
    static ProposalView of(CautionProposal p) {
      return new ProposalView(
          p.id(),
          p.base(),
          p.rule(),
          p.why(),
          MemberJson.of(p.member(), p.by()),
          p.createdAt(),
          p.standing());
    }
  }

  /** What a merge would move, and how the largest ranges would change. */
  @Schema(name = "MergePreview")
  record EffectsView(@JsonUnwrapped MovesView moves, ReportsView reports, List<ShiftView> shifts) {
    static EffectsView of(MergeEffects.Effects e) {
      return new EffectsView(
          MovesView.of(e.preview()),
          new ReportsView(e.loserReports(), e.winnerReports(), e.togetherReports()),
          e.shifts().stream().map(ShiftView::of).toList());
    }
  }

  /**
   * What a merge would move.
   *
   * @param loser the term that would redirect
   * @param winner the term that would stand for it
   * @param children terms that would come to lie below the winner
   * @param spellings of the loser that would mean the winner
   */
  record MovesView(
      TermView loser,
      TermView winner,
      List<TermView> children,
      List<String> spellings,
      List<CautionRule> cautionsGained,
      List<CautionRule> cautionsLost) {
    static MovesView of(MergePreview p) {
      return new MovesView(
          TermView.of(p.loser()),
          TermView.of(p.winner()),
          p.children().stream().map(TermView::of).toList(),
          p.spellings(),
          p.cautionsGained(),
          p.cautionsLost());
    }
  }

  /** Live reports under each term and what lies below it. */
  @Schema(name = "MergedReports")
  record ReportsView(int loser, int winner, int together) {}

  /** One range before and after. */
  @Schema(name = "MergedRange")
  record ShiftView(KeyJson key, WeightView loser, WeightView winner, WeightView together) {
    static ShiftView of(MergeEffects.Shift s) {
      var dose = s.key().process().doseKind().quantity();
      return new ShiftView(
          KeyJson.of(s.key()),
          WeightView.of(s.loser(), dose),
          WeightView.of(s.winner(), dose),
          WeightView.of(s.together(), dose));
    }
  }

  /**
   * How much stands behind a range.
   *
   * @param medianDose left out below three voices
   */
  @Schema(name = "RangeWeight")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record WeightView(int reports, int trials, int voices, @Nullable QuantityJson medianDose) {
    static WeightView of(MergeEffects.Weight w, QuantityKind dose) {
      return new WeightView(
          w.reports(), w.trials(), w.voices(), QuantityJson.of(dose, w.medianDose()));
    }
  }
}
