package club.emberwell.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Reads of many reports no more than is shown of them, and what a member used last. */
@ApplicationScoped
public class ReportBriefs {
  private final ReportRepository reports;

  ReportBriefs(ReportRepository reports) {
    this.reports = reports;
  }

  /**
   * What a member used.
   *
   * @param member number
   * @param machines of the latest reports, the last used first
   */
  public record Used(long member, Set<UUID> machines) {}

  /** By number; those not live are left out. One statement. */
  @Transactional
  public Map<Long, ReportBrief> live(Collection<Long> numbers) {
    return numbers.isEmpty()
        ? Map.of()
        : reports.briefs(Set.copyOf(numbers)).stream()
            .collect(Collectors.toMap(ReportBrief::number, Function.identity()));
  }

  /** The member's latest reports decide. One statement. */
  @Transactional
  public Used used(UUID memberId) {
    List<ReportRepository.Use> uses = reports.uses(memberId, ReportLimits.LAST_USED);
    Set<UUID> machines = new LinkedHashSet<>();
    uses.stream().map(ReportRepository.Use::machine).filter(m -> m != null).forEach(machines::add);
    return new Used(uses.isEmpty() ? 0 : uses.get(0).member(), machines);
  }
}
