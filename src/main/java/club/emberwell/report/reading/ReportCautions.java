package club.emberwell.report.reading;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.remark.Coded;
import java.util.List;
import java.util.stream.Stream;

/** The cautions of one work: what was filed, and what words that wait for a moderator name. */
public final class ReportCautions {
  private ReportCautions() {}

  /** The cautions of a work as its author wrote it, before anything is read of it. */
  public static List<Caution> asWritten(WrittenWork work, Cautions cautions) {
    return cautions.asWritten(
        (String) work.of(WorkProperty.MATERIAL),
        (String) work.of(WorkProperty.COATING),
        work.process() == null ? null : Coded.of(Process.class, work.process()).orElse(null));
  }

  /** Each once, bans first, general ones last. */
  public static List<Caution> of(Work work, LaserSource source, Cautions cautions) {
    return Cautions.once(
        Stream.concat(
            cautions
                .forWork(
                    work.material().slug(),
                    work.coating().slug(),
                    work.process(),
                    work.thicknessMm(),
                    source)
                .stream(),
            Stream.of(work.material(), work.coating())
                .filter(Filed::waits)
                .flatMap(
                    filed -> cautions.ofWords(filed.said(), work.process(), source).stream())));
  }
}
