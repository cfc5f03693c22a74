package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The thickness somebody typed with the material: "3mm birch ply". Only the one quantity that can
 * be a thickness counts, so that in "300 mm x 200 mm x 3 mm" it is 3 mm; two leave it open.
 */
final class ThicknessInWords {
  private static final String AT = "/" + WorkProperty.THICKNESS.code();

  private ThicknessInWords() {}

  /**
   * The thickness of a work at which it is asked for. What is stated always counts; where it is
   * not, the words of the material do, with a remark to be confirmed.
   *
   * @param stated mm, null where it is not stated or at fault
   */
  static Double of(FieldReader in, WrittenWork written, Double stated) {
    String material = written.text(WorkProperty.MATERIAL);
    Optional<Quantity> typed = material == null ? Optional.empty() : in(in, material);
    if (typed.isEmpty()) {
      return stated;
    }
    String text = typed.get().written();
    if (FieldReader.isAbsent(written.quantity(WorkProperty.THICKNESS))) {
      String detail = "Thickness %s, read out of “%s”.".formatted(text, material.strip());
      in.add(Remark.warning(RemarkId.THICKNESS_READ, AT, detail).with(detail, List.of(text)));
      return typed.get().doubleValue();
    }
    if (stated != null
        && !ThicknessClass.of(stated).equals(ThicknessClass.of(typed.get().doubleValue()))) {
      String detail =
          "The material says %s. The thickness stated here is what counts.".formatted(text);
      in.add(Remark.warning(RemarkId.THICKNESS_UNLIKE_WORDS, AT, detail));
    }
    return stated;
  }

  private static Optional<Quantity> in(FieldReader in, String words) {
    List<String> texts = new ArrayList<>();
    Folding.withoutThickness(words, texts::add);
    List<Quantity> found =
        texts.stream()
            .map(text -> in.read(QuantityKind.THICKNESS, WrittenQuantity.of(text), Bounds.NONE))
            .map(Reading::value)
            .flatMap(Optional::stream)
            .filter(quantity -> ThicknessClass.isUsual(quantity.doubleValue()))
            .toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }
}
