package club.emberwell.web.lot;

import club.emberwell.lot.Lots.Inspected;
import club.emberwell.lot.order.OrderLimits;
import club.emberwell.lot.order.Ordering;
import club.emberwell.lot.order.WrittenOrder;
import club.emberwell.lot.order.WrittenOrder.Basis;
import club.emberwell.lot.order.WrittenOrder.Needed;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The fields of the question how many to order; the address holds them all. */
final class OrderForm {
  /** Colours the page has room for. */
  static final int LINES = 4;

  private static final double PERCENT = 100;

  private OrderForm() {}

  /**
   * The blank form.
   *
   * @param lots of which it is known how many were usable
   * @param shared suppliers of which other members share lots
   */
  static Form of(List<Inspected> lots, List<Supplier> shared) {
    Form form = new Form();
    for (int i = 0; i < LINES; i++) {
      form.add(
          Field.of(name(i), i == 0 ? "Colour" : "Colour " + (i + 1))
              .list("colours")
              .maxLength(OrderLimits.NAME));
      form.add(LotForm.pieces(pieces(i), i == 0 ? "Good pieces needed" : "Good pieces " + (i + 1)));
    }
    form.add(
        LotForm.pieces("tests", "Test pieces of each colour")
            .hint("As many blanks as your test grid takes."));
    form.add(
        Field.of("chance", "Enough are usable in")
            .choice("80", "8 of 10 orders")
            .choice("90", "9 of 10 orders")
            .choice("95", "19 of 20 orders")
            .choice("99", "99 of 100 orders")
            .value("90"));
    form.add(basis(lots, shared));
    form.add(LotForm.pieces("usable", "Usable"));
    form.add(LotForm.pieces("received", "of pieces received"));
    form.add(Field.of("share", "Share of usable pieces (%)").hint("95").inputMode("decimal"));
    return form;
  }

  private static Field basis(List<Inspected> lots, List<Supplier> shared) {
    Field field = Field.of("lots", "Lots").choice("", "Not from lots").folded();
    if (!lots.isEmpty()) {
      own(field, lots);
    }
    shared.stream()
        .filter(supplier -> lots.stream().noneMatch(lot -> lot.code().equals(supplier.code())))
        .forEach(
            supplier ->
                field.choice(
                    supplier.name(),
                    "%s, shared by %d members: %d of %d usable"
                        .formatted(
                            supplier.name(),
                            supplier.members(),
                            supplier.pieces().usable(),
                            supplier.pieces().received())));
    return field;
  }

  private static void own(Field field, List<Inspected> lots) {
    field.choice(Ordering.ALL_LOTS, "All my lots: " + counted(lots));
    Map<String, List<Inspected>> bySupplier = new LinkedHashMap<>();
    lots.stream()
        .sorted(Comparator.comparing(Inspected::supplier, String.CASE_INSENSITIVE_ORDER))
        .forEach(lot -> bySupplier.computeIfAbsent(lot.code(), c -> new ArrayList<>()).add(lot));
    bySupplier
        .values()
        .forEach(
            some -> {
              String supplier = some.get(0).supplier();
              field.choice(supplier, supplier + ": " + counted(some));
            });
    field.value(Ordering.ALL_LOTS);
  }

  /**
   * Chooses a supplier, whichever of its spellings was asked for.
   *
   * @param code of the supplier; null for none
   */
  static void choose(Form form, List<Inspected> lots, List<Supplier> shared, String code) {
    Stream.concat(
            lots.stream()
                .filter(lot -> lot.code().equals(code))
                .map(Inspected::supplier)
                .sorted(String.CASE_INSENSITIVE_ORDER),
            shared.stream().filter(one -> one.code().equals(code)).map(Supplier::name))
        .findFirst()
        .ifPresent(form.field("lots")::value);
  }

  private static String counted(List<Inspected> lots) {
    return "%d of %d usable"
        .formatted(
            lots.stream().mapToInt(Inspected::usable).sum(),
            lots.stream().mapToInt(Inspected::received).sum());
  }

  static String name(int line) {
    return "lines." + line + ".name";
  }

  static String pieces(int line) {
    return "lines." + line + ".pieces";
  }

  /** Fields that say that somebody wants an answer. */
  static List<String> asking() {
    return IntStream.range(0, LINES).mapToObj(OrderForm::pieces).toList();
  }

  /**
   * What was typed. A record or a share goes before the lots.
   *
   * @throws EntryRefused for letters where a number should be
   */
  static WrittenOrder written(SentForm sent) {
    List<Needed> lines = new ArrayList<>();
    for (int i = 0; i < LINES; i++) {
      lines.add(new Needed(sent.text(name(i)), sent.number(pieces(i))));
    }
    Integer usable = sent.number("usable");
    Integer received = sent.number("received");
    Double share = percent(sent, "share");
    boolean typed = usable != null || received != null || share != null;
    WrittenOrder order =
        new WrittenOrder(
            lines,
            sent.number("tests"),
            percent(sent, "chance"),
            new Basis(typed ? null : sent.text("lots"), usable, received, share));
    if (!sent.remarks().isEmpty()) {
      throw new EntryRefused(sent.remarks());
    }
    return order;
  }

  private static Double percent(SentForm sent, String name) {
    String text = sent.text(name);
    if (text == null) {
      return null;
    }
    try {
      return Double.parseDouble(text.replace("%", "").replace(',', '.').strip()) / PERCENT;
    } catch (NumberFormatException e) {
      String detail = "A number of percent, such as 95.";
      sent.remarks().add(Remark.error(RemarkId.NUMBER_UNREADABLE, "/" + name, detail));
      return null;
    }
  }
}
