package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Process;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class WorkQueryTest {
  private static final Vocabulary WORDS = CatalogFiles.catalog().vocabulary();

  private static RangeKey cut(String material) {
    MadeTrials made = new MadeTrials();
    made.by(1)
        .of(Process.CUT)
        .dose(1)
        .with(Property.MATERIAL, material)
        .with(Property.THICKNESS_CLASS, "3-mm");
    return made.group().key();
  }

  @Test
  void aKeyIsAskedForByItsParts() {
    SearchQuery query = WorkQuery.of(cut("birch-plywood"), WORDS);
    assertEquals(List.of("cut"), query.facets().get("process"));
    assertEquals(List.of("10600"), query.facets().get("band"));
    assertEquals(List.of("birch-plywood"), query.facets().get("material"));
    assertEquals(List.of("3-mm"), query.facets().get("thickness"));
  }

  /** "Plywood" as a work of its own is not birch plywood, although the word covers both. */
  @Test
  void aWordWithOthersBelowItMeansItself() {
    List<String> asked = WorkQuery.of(cut("plywood"), WORDS).facets().get("material");
    assertEquals(Set.of("plywood"), QueryParts.expand(Facet.MATERIAL, asked, WORDS));
    assertTrue(QueryParts.expand(Facet.MATERIAL, List.of("plywood"), WORDS).size() > 1);
  }

  @Test
  void theAddressOfAKeyReadsBackAsTheSame() {
    SearchQuery query = WorkQuery.of(cut("plywood"), WORDS);
    String address = SearchQueryCodec.write(query);
    SearchQuery read =
        SearchQueryCodec.read(QueryString.parse(address), WORDS, Set.of(), NumberStyle.ANY).query();
    assertEquals(query.facets(), read.facets());
  }

  @Test
  void whatNobodyStatedIsAskedForAsSuch() {
    MadeTrials made = new MadeTrials();
    made.by(1).of(Process.CUT).dose(1).with(Property.MATERIAL, "slate");
    SearchQuery query = WorkQuery.of(made.group().key(), WORDS);
    assertEquals(List.of(Facet.NOT_GIVEN), query.facets().get("thickness"));
  }

  @Test
  void aWavelengthOutsideTheBandsIsAskedForWithinOnePercent() {
    MadeTrials made = new MadeTrials();
    made.by(1).at(WavelengthBand.OTHER).with(Measure.WAVELENGTH, 1940).dose(1);
    SearchQuery.Limits asked =
        WorkQuery.of(made.group().key(), WORDS).ranges().get(Measure.WAVELENGTH.code());
    assertTrue(asked.min() <= 1940 && asked.max() >= 1940, asked.toString());
    assertEquals(1.01, asked.max() / asked.min(), 0.001);
  }
}
