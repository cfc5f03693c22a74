package club.emberwell.report.reading;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.Term;
import club.emberwell.laser.LaserSource;
import java.util.List;
import java.util.stream.Stream;

/** The cautions of one work: what was filed, and what words that wait for a moderator name. */
public final class ReportCautions {
  private ReportCautions() {}

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
                .flatMap(filed -> ofWords(filed, work, source, cautions))));
  }

  /** Of what the words name; where they name nothing that is known, of what nobody knows. */
  private static Stream<Caution> ofWords(
      Filed filed, Work work, LaserSource source, Cautions cautions) {
    List<Term> named = cautions.named(filed.written());
    return named.isEmpty()
        ? cautions.unlisted(filed.said()).stream()
        : cautions.forTerms(named, List.of(work.process()), List.of(source)).stream();
  }
}
