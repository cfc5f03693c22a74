package club.emberwell.desk.supplier;

import club.emberwell.bench.FieldReader;
import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.lot.LotLimits;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Joins names that mean one supplier, and parts them again. No lot is touched: whoever asks for a
 * supplier is led from a spelling to its name, so that parting them gives back exactly what was.
 * Whether anybody writes a name so is not looked at: a refusal would tell it.
 */
@ApplicationScoped
public class SupplierSpellings {
  private static final ListOrder JOINED =
      ListOrder.newestFirst("supplier-spellings", DeskLimits.PAGE);
  private static final String ENTITY = "supplier-spelling";

  private final SupplierSpellingRepository stored;
  private final Audit audit;

  SupplierSpellings(SupplierSpellingRepository stored, Audit audit) {
    this.stored = stored;
    this.audit = audit;
  }

  /** What is joined, the last first; one statement. */
  @Transactional
  public Slice<SupplierSpelling> joined(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(
        part,
        JOINED,
        place -> stored.before(place.number(0), place.from(), place.most()),
        one -> List.of(one.number()));
  }

  @Transactional
  public SupplierSpelling one(Actor actor, String code) {
    DeskAccess.moderates(actor);
    return stored.find(code).orElseThrow(() -> new EntryUnknown(ENTITY));
  }

  /**
   * What a moderator says.
   *
   * @param spelling that is another one of
   * @param supplier this one, by its name or any spelling that is joined to it
   * @param reason for the log
   */
  public record Draft(String spelling, String supplier, String reason) {
    private Draft checked() {
      FieldReader in = new FieldReader(NumberStyle.ANY);
      in.required("/spelling", spelling);
      in.required("/supplier", supplier);
      in.required("/reason", reason);
      Draft read =
          new Draft(
              in.text("/spelling", spelling, LotLimits.WORDS, false),
              in.text("/supplier", supplier, LotLimits.WORDS, false),
              in.text("/reason", reason, DeskLimits.REASON, true));
      Remarks.refuse(in.remarks());
      return read;
    }
  }

  /** A name that others count as. */
  private record Head(String code, String name) {}

  /**
   * Makes a name count as another. What is joined so already stays as it is.
   *
   * @throws EntryRefused where both are one, or where it would make a chain or a circle
   */
  @Transactional
  public SupplierSpelling join(Actor actor, Draft sent) {
    DeskAccess.moderates(actor);
    Draft draft = sent.checked();
    stored.lock();
    String code = stored.code(draft.spelling());
    Head head = head(draft.supplier());
    Optional<SupplierSpelling> there = stored.find(code);
    if (there.isPresent() && there.get().supplierCode().equals(head.code())) {
      return there.get();
    }
    there.ifPresent(SupplierSpellings::refuseSecond);
    refuseCircle(draft, code, head);
    stored.nameOfHead(code).ifPresent(SupplierSpellings::refuseChain);
    stored.add(code, draft.spelling(), head.code(), head.name(), actor.memberId(), draft.reason());
    record(actor, "join-supplier", stored.find(code).orElseThrow(), draft.reason());
    return stored.find(code).orElseThrow();
  }

  private Head head(String name) {
    String code = stored.code(name);
    return stored
        .find(code)
        .map(joined -> new Head(joined.supplierCode(), joined.supplier()))
        .orElseGet(() -> new Head(code, stored.nameOfHead(code).orElse(name)));
  }

  private static void refuseSecond(SupplierSpelling there) {
    throw new EntryRefused(
        RemarkId.SPELLING_TAKEN,
        "/spelling",
        "“%s” counts as “%s” already. Part them first."
            .formatted(there.spelling(), there.supplier()));
  }

  private void refuseCircle(Draft draft, String code, Head head) {
    if (!code.equals(head.code())) {
      return;
    }
    String detail =
        stored.code(draft.supplier()).equals(code)
            ? "Both are the same name: capitals, spaces, full width and dots at the end do not"
                + " count."
            : "“%s” is a spelling of “%s” itself. Part them first."
                .formatted(draft.supplier(), head.name());
    throw new EntryRefused(RemarkId.MERGE_INTO_ITSELF, "/supplier", detail);
  }

  private static void refuseChain(String name) {
    throw new EntryRefused(
        RemarkId.SPELLING_TAKEN,
        "/spelling",
        "Other spellings count as “%s”. Join the other name to it, or part those first."
            .formatted(name));
  }

  /** Parts a spelling from its name: it is a supplier of its own again. */
  @Transactional
  public void part(Actor actor, String code, String why) {
    DeskAccess.moderates(actor);
    String reason = DeskAccess.reason(why);
    stored.lock();
    SupplierSpelling there = one(actor, code);
    stored.remove(code);
    record(actor, "part-supplier", there, reason);
  }

  private void record(Actor actor, String action, SupplierSpelling one, String reason) {
    Map<String, Object> detail = Map.of("spelling", one.spelling(), "supplier", one.supplier());
    audit.record(actor, action, ENTITY, one.code(), reason, detail);
  }
}
