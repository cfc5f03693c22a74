package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.laser.LaserSource;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportBriefs;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** On which of one's machines somebody will do what others did on theirs. */
@ApplicationScoped
public class LikelyMachine {
  private final ReportBriefs briefs;

  LikelyMachine(ReportBriefs briefs) {
    this.briefs = briefs;
  }

  /** Of those with such a source the one that was used last; empty where there is none such. */
  public Optional<UUID> of(Actor actor, List<Machine> own, LaserSource source) {
    List<UUID> alike =
        own.stream().filter(m -> m.laser().source() == source).map(Machine::id).toList();
    return alike.size() < 2
        ? alike.stream().findFirst()
        : Stream.concat(briefs.used(actor.memberId()).machines().stream(), alike.stream())
            .filter(alike::contains)
            .findFirst();
  }
}
