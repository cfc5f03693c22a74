package club.emberwell.lot.supplier;

import club.emberwell.lot.CountedShare;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A supplier as the shared lots of several members tell of it; never who they are.
 *
 * @param code stands in its address
 * @param name as most of them spell it, without the spellings that moderators joined to it
 * @param members who share lots of it
 * @param lots they share
 * @param least usable share of a lot
 * @param most usable share of a lot
 */
public record Supplier(
    String code,
    String name,
    int members,
    int lots,
    CountedShare pieces,
    double least,
    double most) {

  /**
   * The same with what it is made of.
   *
   * @param spellings that moderators joined to it
   * @param kinds by material, coating and colour, most lots first
   * @param lots the last received first
   */
  public record Detail(
      Supplier supplier, List<String> spellings, List<Blanks> kinds, List<SharedLot> lots) {}

  /** Its lots of one material, coating and colour. */
  public record Blanks(
      String material,
      @Nullable String coating,
      @Nullable String colour,
      int members,
      int lots,
      CountedShare pieces) {}

  /**
   * A lot as it is shared.
   *
   * @param month in which it came, as 2026-09; null where nobody said
   */
  public record SharedLot(
      @Nullable String month,
      String material,
      @Nullable String coating,
      @Nullable String colour,
      CountedShare pieces) {}
}
