package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchQuery;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClosenessTest {
  private static Laser laser(double nm, double watt, Motion motion, Regime regime, Double beam) {
    return new Laser(LaserSource.FIBRE, nm, watt, motion, Emission.of(regime), null, beam, null);
  }

  @Test
  void bandAndRegimeDecideBeforePowerBeforeBeam(@TempDir Path folder) throws InterruptedException {
    Laser mine = laser(1064, 20, Motion.GALVO, Regime.NS, 40.0);
    List<ReportSnapshot> inOrder =
        Stream.of(
                mine,
                laser(1064, 20, Motion.GALVO, Regime.NS, 44.0),
                laser(1064, 20, Motion.GALVO, Regime.NS, null),
                laser(1064, 20, Motion.GANTRY, Regime.NS, 40.0),
                laser(1064, 50, Motion.GALVO, Regime.NS, 40.0),
                laser(1064, 20, Motion.GALVO, Regime.CW, 40.0),
                laser(450, 20, Motion.GALVO, Regime.NS, 40.0))
            .map(each -> ReportMaker.report().of("slate").with(each).make())
            .toList();
    FakeClub club = new FakeClub();
    club.save(inOrder);
    try (SearchFixture fixture = SearchFixture.over(club, folder).settled()) {
      UUID machine = UUID.randomUUID();
      fixture.machines.put(machine, mine);
      SearchResult result = fixture.search(SearchQuery.everything().withNear(machine));
      assertEquals(Order.NEAR, result.order());
      assertEquals(inOrder, result.hits().stream().map(SearchResult.Hit::report).toList());
    }
  }

  @Test
  void anUnknownMachineLeavesTheUsualOrder(@TempDir Path folder) throws InterruptedException {
    FakeClub club = new FakeClub();
    club.save(ReportMaker.report().of("slate").make());
    try (SearchFixture fixture = SearchFixture.over(club, folder).settled()) {
      SearchQuery query = SearchQuery.everything().withNear(UUID.randomUUID()).withSort("near");
      assertEquals(Order.NEWEST, fixture.search(query).order());
    }
  }
}
