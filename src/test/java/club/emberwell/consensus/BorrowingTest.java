package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.WorkKey;
import club.emberwell.laser.Process;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.stats.RandomEffects;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Borrowing. The shrinkage is checked against {@code shrinkage_blup} in {@code stats}. */
class BorrowingTest {
  private static final double[][] SIBLINGS = {{0.0, 0.2}, {0.5, 0.7}, {1.0, 1.2, 1.1}};

  private static Optional<Borrowing> borrow(double[][] siblings, double... ownLogs) {
    MadeTrials made = new MadeTrials();
    for (int i = 0; i < ownLogs.length; i++) {
      made.by(i + 1L).dose(Math.exp(ownLogs[i])).with(Property.COLOUR, "Own");
    }
    int member = 10;
    for (int colour = 0; colour < siblings.length; colour++) {
      for (double log : siblings[colour]) {
        made.by(member++).dose(Math.exp(log)).with(Property.COLOUR, "Colour " + colour);
      }
    }
    List<Group> groups = made.groups();
    RangeKey any = groups.get(0).key();
    RangeKey key =
        new RangeKey(
            any.process(),
            any.light(),
            any.regime(),
            any.work().with(Facet.COLOUR, new WorkKey.Part("Own", "Own")));
    Optional<Group> own = groups.stream().filter(group -> group.key().equals(key)).findFirst();
    Relatives from = new Relatives(SearchQuery.everything(), Facet.COLOUR, "other colours");
    return Borrowing.of(own, key, from.beside(key, groups), Facet.COLOUR, from.words());
  }

  @Test
  void theOwnValueIsDrawnTowardItsRelativesByTheWeightOfTheirSpread() {
    Borrowing found = borrow(SIBLINGS, 2.0, 2.2).orElseThrow();
    // squares within: 0.02 in each of two colours, the third and the own; repeats 1 + 1 + 2 + 1
    double within = (0.02 + 0.02 + 0.02 + 0.02) / 5;
    RandomEffects parent =
        RandomEffects.of(
                new double[] {0.1, 0.6, 1.1}, new double[] {within / 2, within / 2, within / 3})
            .orElseThrow();
    double weight = parent.tau2() / (parent.tau2() + within / 2);
    assertEquals(weight, found.weightOnOwn(), 1e-9);
    assertEquals(Math.exp(weight * 2.1 + (1 - weight) * parent.mean()), found.value(), 1e-9);
    assertEquals(Math.exp(2.1), found.own().orElseThrow(), 1e-9);
    assertEquals(3, found.lenders().relatives());
    assertEquals(7, found.lenders().members());
    assertTrue(found.interval().contains(found.value()));
    assertTrue(
        found.sentence().contains("% borrowed from other colours: 7 members on 3 works like it."));
  }

  @Test
  void relativesThatDoNotDifferLendEverything() {
    double[][] alike = {{0.0, 0.2}, {0.0, 0.2}, {0.0, 0.2}};
    Borrowing found = borrow(alike, 0.5).orElseThrow();
    assertEquals(0, found.weightOnOwn());
    assertEquals(Math.exp(0.1), found.value(), 1e-9);
  }

  @Test
  void whereNobodyDidItEverythingIsBorrowedAndTheIntervalHoldsTheirSpread() {
    Borrowing found = borrow(SIBLINGS).orElseThrow();
    assertTrue(found.own().isEmpty());
    assertTrue(found.sentence().startsWith("Borrowed entirely from other colours"));
    assertTrue(found.interval().contains(Math.exp(0.1)) && found.interval().contains(3));
  }

  @Test
  void twoRelativesAreTooFewToKnowHowMuchRelativesDiffer() {
    assertTrue(borrow(new double[][] {{0.0, 0.2}, {0.5, 0.7, 0.6}}, 2.0).isEmpty());
  }

  @Test
  void theNearestRelativesAreAskedFirst() {
    SearchQuery query =
        SearchQuery.everything()
            .withFacet("material", List.of("birch-plywood"))
            .withFacet("coating", List.of("lacquer"))
            .withFacet("colour", List.of("white"));
    Vocabulary vocabulary = CatalogFiles.catalog().vocabulary();
    List<Relatives> all = Relatives.of(query, vocabulary);
    assertEquals(
        List.of(Facet.COLOUR, Facet.COATING, Facet.MATERIAL),
        all.stream().map(Relatives::by).toList());
    assertTrue(all.get(0).query().facets().containsKey("coating"));
    assertFalse(all.get(0).query().facets().containsKey("colour"));
    assertFalse(all.get(2).query().facets().get("material").contains("birch-plywood"));
    assertTrue(Relatives.of(SearchQuery.everything(), vocabulary).isEmpty());
  }

  @Test
  void whatNobodyStatedHasNoRelatives() {
    SearchQuery query =
        SearchQuery.everything()
            .withFacet("coating", List.of(Facet.NOT_GIVEN))
            .withFacet("colour", List.of(Facet.NOT_FILED));
    assertTrue(Relatives.of(query, CatalogFiles.catalog().vocabulary()).isEmpty());
  }

  /** Severance energy 1.7 J/mm2 at 2, 3 and 5 mm lends 6 x 1.7 J/mm to 6 mm. */
  @Test
  void thicknessesLendByTheirLineDosePerThickness() {
    MadeTrials made = new MadeTrials();
    int member = 1;
    for (int mm : new int[] {2, 3, 5}) {
      for (double off : new double[] {0.95, 1, 1 / 0.95}) {
        made.by(member++)
            .of(Process.CUT)
            .dose(1.7 * mm * off)
            .with(Property.THICKNESS_CLASS, mm + "-mm");
      }
    }
    List<Group> lenders = made.groups();
    RangeKey any = lenders.get(0).key();
    RangeKey six =
        new RangeKey(
            any.process(),
            any.light(),
            any.regime(),
            any.work().with(Facet.THICKNESS, new WorkKey.Part("6-mm", "6 mm")));
    Borrowing found =
        Borrowing.of(Optional.empty(), six, lenders, Facet.THICKNESS, "others").orElseThrow();
    assertEquals(10.2, found.value(), 1e-9);
    assertEquals(9, found.lenders().members());
  }
}
