package club.emberwell.search.query;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Remark;
import club.emberwell.search.SearchFixture;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SearchQueryCodecTest {
  private static SearchQueryCodec.Parsed read(String address) {
    Map<String, List<String>> parameters = new LinkedHashMap<>();
    for (String pair : address.split("&")) {
      int at = pair.indexOf('=');
      if (at > 0) {
        parameters
            .computeIfAbsent(pair.substring(0, at), key -> new ArrayList<>())
            .add(URLDecoder.decode(pair.substring(at + 1), StandardCharsets.UTF_8));
      }
    }
    return SearchQueryCodec.read(parameters, SearchFixture.WORDS, Set.of());
  }

  private static String canonical(String address) {
    SearchQueryCodec.Parsed parsed = read(address);
    assertEquals(List.of(), parsed.problems(), address);
    return SearchQueryCodec.write(parsed.query());
  }

  private static List<String> problems(String address) {
    return read(address).problems().stream().map(Remark::field).toList();
  }

  @Test
  void everyStateHasOneAddress() {
    assertEquals(
        canonical("material=slate&source=uv&source=co2&q=logo&page=2"),
        canonical("page=2&q=+logo+&source=co2&source=uv&source=co2&material=slate&size=20"));
    assertEquals("", canonical("q=&page=0&sort=newest&source="));
  }

  @Test
  void anAddressReadAgainIsTheSameState() {
    String address =
        "q=caf%C3%A9+%26+bar&source=co2&material=slate&effect=right&speedMin=12+in/s"
            + "&powerMax=5,5+W&arealDoseMin=0.1+J/mm2&lineSpacingMax=0.08+mm"
            + "&pulseDurationMin=100+ns&repetitionRateMin=20+kHz&wavelengthMin=1064+nm"
            + "&beamDiameterMax=40+um&postedAfter=2026-01-31&sort=quality&page=3&size=50";
    SearchQuery query = read(address).query();
    String written = canonical(address);
    assertEquals(query, read(written).query(), written);
  }

  @Test
  void aRangeIsReadInItsUnitAndRefusedWithoutOne() {
    // 12 in/s = 304.8 mm/s: the inch is 25.4 mm exactly (NIST SP 811, appendix B.8)
    assertEquals(304.8, read("speedMin=12+in/s").query().ranges().get("speed").min());
    assertEquals(List.of("/speedMin"), problems("speedMin=300"));
    assertEquals(List.of("/speedMax"), problems("speedMax=1,000+mm/min"));
  }

  @Test
  void aMaterialIsReadInAnySpelling() {
    assertEquals(
        List.of("stainless-304"), read("material=18/8+Stainless").query().facets().get("material"));
  }

  @ParameterizedTest
  @CsvSource({"3-mm", "3+mm", "3mm", "1/8+in", "0.12+in", "3.2+mm"})
  void aThicknessIsReadAsItsClassInAnyUnit(String written) {
    assertEquals("thickness=3-mm", canonical("thickness=" + written));
  }

  @Test
  void aThicknessWithoutAUnitIsAskedAboutInTheUnitsThatSheetsAreSoldIn() {
    Remark asked = read("thickness=3").problems().get(0);
    assertEquals("/thickness", asked.field());
    assertEquals("Do you mean 3 mm or 3 in?", asked.detail());
    assertEquals(List.of("3 mm", "3 in"), asked.readings());
    asked.readings().forEach(text -> canonical("thickness=" + text));
    assertEquals("thickness=3-mm", canonical("thickness=1/8"));
  }

  @Test
  void whatCannotBeReadIsNamed() {
    assertEquals(List.of("/colur"), problems("colur=black"));
    assertEquals(List.of("/source"), problems("source=steam"));
    assertEquals(List.of("/material"), problems("material=unobtainium"));
    assertEquals(List.of("/page"), problems("page=1001"));
    assertEquals(List.of("/size"), problems("size=101"));
    assertEquals(List.of("/size"), problems("size=0"));
    assertEquals(List.of("/near"), problems("near=mine"));
    assertEquals(List.of("/sort"), problems("sort=random"));
    assertEquals(List.of("/q"), problems("q=a&q=b"));
    assertEquals(List.of("/q"), problems("q=" + "a".repeat(201)));
    assertEquals(List.of("/postedAfter"), problems("postedAfter=yesterday"));
    assertEquals(List.of("/speedMin"), problems("speedMin=9+mm/s&speedMax=3+mm/s"));
    String many = "member=a".repeat(1) + "&member=x".repeat(60);
    assertEquals(List.of("/member"), problems(many));
  }

  @Test
  void anUnknownValueStaysChosenSoThatNobodySeesMoreThanAskedFor() {
    assertEquals(
        List.of("unobtainium"), read("material=unobtainium").query().facets().get("material"));
  }

  @Test
  void reportsThatDoNotSayCanBeAskedFor() {
    assertTrue(read("coating=not-given&material=not-filed").problems().isEmpty());
  }
}
