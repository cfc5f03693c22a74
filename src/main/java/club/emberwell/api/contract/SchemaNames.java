package club.emberwell.api.contract;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jboss.jandex.ClassInfo;

/**
 * What types of the program's inside are called in the API, where their own name says too little
 * outside of their package.
 */
final class SchemaNames {
  private static final String BASE = "club.emberwell.";

  private static final Map<String, String> NAMES =
      Map.ofEntries(
          Map.entry("api.grid.GridJson$Brief", "GridBrief"),
          Map.entry("api.grid.GridPhotoResource$Marks", "GridCorners"),
          Map.entry("api.grid.GridPhotoResource$PhotoJson", "GridPhoto"),
          Map.entry("api.grid.ResultsJson$CellJson", "JudgedCell"),
          Map.entry("api.talk.TalkRevisionJson$Line", "ChangedLine"),
          Map.entry("api.view.MemberJson", "MemberRef"),
          Map.entry("api.view.PhotoJson$Size", "PhotoSize"),
          Map.entry("consensus.answer.OnMyMachine$Basis", "EqualDoseBasis"),
          Map.entry("consensus.answer.OnMyMachine$Place", "EqualDosePlace"),
          Map.entry("consensus.answer.Start$Basis", "StartBasis"),
          Map.entry("consensus.answer.Why", "RoughReason"),
          Map.entry("consensus.dose.Window$Counts", "TrialCounts"),
          Map.entry("desk.home.DeskHome$Counts", "DeskCounts"),
          Map.entry("desk.undo.UndoPlan$Count", "UndoCount"),
          Map.entry("entry.Decision", "DecisionAction"),
          Map.entry("entry.Difference$Change", "LineChange"),
          Map.entry("entry.Difference$Line", "ChangedLine"),
          Map.entry("grid.next.Proposal$Basis", "ProposalBasis"),
          Map.entry("hook.Delivery$State", "DeliveryState"),
          Map.entry("grid.photo.Spot", "PhotoSpot"),
          Map.entry("grid.plan.Cover$Basis", "CoverBasis"),
          Map.entry("grid.plan.Layout$Parts", "BlankParts"),
          Map.entry("grid.result.Place", "GridPlace"),
          Map.entry("laser.dose.Transfer$Verdict", "TransferVerdict"),
          Map.entry("lot.drift.Drift", "LotDrift"),
          Map.entry("lot.drift.Drift$Change", "DoseChange"),
          Map.entry("lot.drift.Drift$Noticed", "NoticedChange"),
          Map.entry("lot.drift.Drift$Others", "OthersChange"),
          Map.entry("lot.drift.SharedDrift", "SupplierDrift"),
          Map.entry("lot.order.Order", "BlankOrder"),
          Map.entry("lot.order.Order$From", "UsableFrom"),
          Map.entry("lot.order.Order$Line", "OrderLine"),
          Map.entry("lot.order.Order$Usable", "UsableShare"),
          Map.entry("lot.order.WrittenOrder$Needed", "OrderNeed"),
          Map.entry("lot.supplier.Supplier", "RankedSupplier"),
          Map.entry("lot.supplier.Supplier$Blanks", "SupplierBlanks"),
          Map.entry("member.club.ClubCare$Draft", "ClubRequest"),
          Map.entry("member.door.Invitations$Draft", "InvitationRequest"),
          Map.entry("recipe.Folders$Folder", "RecipeFolder"),
          Map.entry("stats.DoseLimit$Kind", "EdgeKind"),
          Map.entry("stats.Evidence", "RangeEvidence"),
          Map.entry("stats.DoseWindow$State", "WindowState"),
          Map.entry("stats.Ratio$Kind", "ContrastKind"));

  private SchemaNames() {}

  static Optional<String> of(ClassInfo type) {
    return Optional.ofNullable(NAMES.get(type.name().toString().substring(BASE.length())));
  }

  /** A line that names nothing any more fails the build. */
  static void assertUsed(Set<String> schemas) {
    NAMES
        .values()
        .forEach(
            name -> {
              if (!schemas.contains(name)) {
                throw new IllegalStateException("no such schema in the API: " + name);
              }
            });
  }
}
