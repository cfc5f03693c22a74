package club.emberwell.search;

import club.emberwell.laser.Effect;
import club.emberwell.search.column.Columns;
import club.emberwell.search.column.Documents;
import club.emberwell.search.column.PackedCodes;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Order;
import java.io.IOException;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.Scorable;

/** Gives each trial the number its report is ordered by; the highest of a report counts. */
final class HitOrder {
  private static final double RIGHT = 10;

  private final Order order;
  private final Closeness closeness;
  private NumericDocValues created;
  private NumericDocValues codes;
  private NumericDocValues ratedPower;
  private NumericDocValues beam;
  private NumericDocValues arealDose;
  private NumericDocValues lineDose;
  private Scorable scorer;

  /**
   * @param closeness null unless ordered by it
   */
  HitOrder(Order order, Closeness closeness) {
    this.order = closeness == null && order == Order.NEAR ? Order.NEWEST : order;
    this.closeness = closeness;
  }

  boolean needsScores() {
    return order == Order.RELEVANCE;
  }

  void enter(LeafReader leaf) throws IOException {
    created = DocValues.getNumeric(leaf, Columns.CREATED);
    codes = DocValues.getNumeric(leaf, Columns.CODES);
    ratedPower = DocValues.getNumeric(leaf, Measure.RATED_POWER.field());
    beam = DocValues.getNumeric(leaf, Measure.BEAM_DIAMETER.field());
    arealDose = DocValues.getNumeric(leaf, Measure.AREAL_DOSE.field());
    lineDose = DocValues.getNumeric(leaf, Measure.LINE_DOSE.field());
  }

  void scoredBy(Scorable scorable) {
    scorer = scorable;
  }

  double key(int document) throws IOException {
    return switch (order) {
      case RELEVANCE -> scorer.score();
      case NEWEST -> Documents.number(created, document);
      case QUALITY -> quality(Documents.number(codes, document));
      case DOSE -> -dose(document);
      case NEAR ->
          -closeness.distance(
              Documents.number(codes, document),
              Documents.real(ratedPower, document),
              Documents.real(beam, document));
    };
  }

  /** When the report was posted, ms since 1970: decides between equal keys. */
  long created(int document) throws IOException {
    return Documents.number(created, document);
  }

  /** A trial has one of the two or none. */
  private double dose(int document) throws IOException {
    double areal = Documents.real(arealDose, document);
    double dose = Double.isNaN(areal) ? Documents.real(lineDose, document) : areal;
    return Double.isNaN(dose) ? Double.POSITIVE_INFINITY : dose;
  }

  private static double quality(long packed) {
    if (PackedCodes.effect(packed) != Effect.RIGHT) {
      return 0;
    }
    return RIGHT + Math.max(0, PackedCodes.QUALITY.code(packed));
  }
}
