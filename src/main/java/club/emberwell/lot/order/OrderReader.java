package club.emberwell.lot.order;

import club.emberwell.bench.FieldReader;
import club.emberwell.lot.order.WrittenOrder.Basis;
import club.emberwell.lot.order.WrittenOrder.Needed;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reads what somebody needs, or says what is at fault; pure. */
final class OrderReader {
  private OrderReader() {}

  /**
   * What is needed, with everything that may be left out filled in.
   *
   * @param basis at most one of its three kinds
   */
  record Read(List<Needed> lines, int tests, double chance, Basis basis) {}

  static Read read(WrittenOrder w) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    List<Needed> lines = lines(w.lines(), in);
    whole("/tests", w.tests(), 0, OrderLimits.PIECES, in);
    if (w.chance() != null && !OrderLimits.CHANCE.hold(w.chance())) {
      String detail = "No order is certain. Choose a chance from 50 % to 99.9 % (0.5 to 0.999).";
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, "/chance", detail));
    }
    basis(w.basis(), in);
    Remarks.refuse(in.remarks());
    return new Read(
        lines,
        w.tests() == null ? 0 : w.tests(),
        w.chance() == null ? OrderLimits.USUAL_CHANCE : w.chance(),
        w.basis());
  }

  private static List<Needed> lines(List<Needed> written, FieldReader in) {
    if (written.size() > OrderLimits.LINES) {
      String detail = "At most %d lines.".formatted(OrderLimits.LINES);
      in.add(Remark.error(RemarkId.TOO_MANY, "/lines", detail));
      return List.of();
    }
    List<Needed> lines = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      Needed line = written.get(i);
      if (line != null && line.said()) {
        String at = "/lines/" + i;
        in.required(at + "/pieces", line.pieces());
        whole(at + "/pieces", line.pieces(), 1, OrderLimits.PIECES, in);
        String name = in.text(at + "/name", line.name(), OrderLimits.NAME, false);
        lines.add(new Needed(name, line.pieces()));
      }
    }
    if (lines.isEmpty()) {
      String detail = "How many good pieces do you need?";
      in.add(Remark.error(RemarkId.REQUIRED, "/lines/0/pieces", detail));
    }
    return lines;
  }

  private static void basis(Basis basis, FieldReader in) {
    boolean counted = basis.usable() != null || basis.received() != null;
    String lots = in.text("/lots", basis.lots(), OrderLimits.NAME, false);
    if (Stream.of(lots != null, counted, basis.share() != null).filter(given -> given).count()
        > 1) {
      String detail = "Choose one: your lots, a record, or a share you know.";
      in.add(Remark.error(RemarkId.ORDER_BASIS, lots == null ? "/share" : "/lots", detail));
    }
    if (basis.share() != null && !(basis.share() > 0 && basis.share() <= 1)) {
      String detail = "A share is more than 0 % and at most 100 % (0 to 1).";
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, "/share", detail));
    }
    if (!counted) {
      return;
    }
    in.required("/usable", basis.usable());
    in.required("/received", basis.received());
    boolean both =
        whole("/usable", basis.usable(), 0, OrderLimits.RECORD, in)
                & whole("/received", basis.received(), 1, OrderLimits.RECORD, in)
            && basis.usable() != null
            && basis.received() != null;
    if (both && basis.usable() > basis.received()) {
      String detail =
          "%d usable of %d received cannot be.".formatted(basis.usable(), basis.received());
      in.add(Remark.error(RemarkId.LOT_COUNTS, "/usable", detail));
    }
  }

  private static boolean whole(String pointer, Integer given, int least, int most, FieldReader in) {
    boolean fits = given == null || given >= least && given <= most;
    if (!fits) {
      String detail = "From %d to %,d pieces.".formatted(least, most);
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, pointer, detail));
    }
    return fits;
  }
}
