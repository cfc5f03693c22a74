package club.emberwell.exchange;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Cast;
import club.emberwell.exchange.open.DataPackage;
import club.emberwell.exchange.open.PackageMaker;
import com.sun.management.OperatingSystemMXBean;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How long 100,000 reports of one trial take: {@code mvn test -Pbenchmark
 * -Dtest=OpenDataSpeedTest}. Fewer reports with more trials each take less.
 */
@QuarkusTest
@Tag("benchmark")
class OpenDataSpeedTest {
  private static final int REPORTS = 100_000;
  private static final Duration INDEXED_WITHIN = Duration.ofMinutes(5);
  private static final Duration LOOKED_AT_EVERY = Duration.ofSeconds(5);
  private static final OperatingSystemMXBean SYSTEM =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  @Inject Cast cast;
  @Inject Life life;
  @Inject PackageMaker maker;

  @Test
  void aHundredThousandTrials() throws IOException {
    UUID pattern = UUID.fromString(life.live().report());
    // in one transaction: the index follows entries as they become visible
    cast.run(
        """
        do $$
        begin
          create temporary table copies on commit drop as
          select gen_random_uuid() as id, n from generate_series(1, %1$d) as n;

          insert into entry (id, kind, member_id, state, version, title, created_at, updated_at)
          select c.id, e.kind, e.member_id, e.state, 1, e.title, e.created_at, e.updated_at
          from copies c, entry e where e.id = '%2$s';

          insert into report (id, written, number_style, interpreter_version, remarks, machine_id,
            source, wavelength_nm, rated_power_w, motion, regime, gated, material,
            material_written, process, notes)
          select c.id, r.written, r.number_style, r.interpreter_version, r.remarks, r.machine_id,
            r.source, r.wavelength_nm, r.rated_power_w, r.motion, r.regime, r.gated, r.material,
            r.material_written, r.process, r.notes
          from copies c, report r where r.id = '%2$s';

          insert into trial (report_id, position, settings, effect, defects)
          select c.id, 0, t.settings, t.effect, t.defects
          from copies c, trial t where t.report_id = '%2$s';
        end $$"""
            .formatted(REPORTS, pattern));
    cast.run("analyze");
    await("the index holds them")
        .atMost(INDEXED_WITHIN)
        .pollInterval(LOOKED_AT_EVERY)
        .until(() -> found() >= REPORTS);
    for (int round = 0; round < 3; round++) {
      System.gc();
      long used = SYSTEM.getProcessCpuTime();
      long before = System.nanoTime();
      DataPackage made = maker.make().orElseThrow();
      System.out.printf(
          "%d trials in %.1f s, %.1f s of its processors, %.1f MB packed, at most %d MB of memory%n",
          made.counts().trials(),
          (System.nanoTime() - before) / 1e9,
          (SYSTEM.getProcessCpuTime() - used) / 1e9,
          made.zip().bytes() / 1e6,
          most() >> 20);
      assertTrue(made.counts().trials() >= REPORTS);
    }
    long before = System.nanoTime();
    int bytes = given().get("/data/trials.csv").asByteArray().length;
    System.out.printf("sent %.1f MB in %.1f s%n", bytes / 1e6, (System.nanoTime() - before) / 1e9);
  }

  private static int found() {
    return given().get("/api/v1/reports?size=1").path("total");
  }

  private static long most() {
    long most = 0;
    for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
      if (pool.getType() == MemoryType.HEAP) {
        most += pool.getPeakUsage().getUsed();
        pool.resetPeakUsage();
      }
    }
    return most;
  }
}
