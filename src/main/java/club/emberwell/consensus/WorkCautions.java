package club.emberwell.consensus;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.column.TrialColumns.PropertyLabels;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** The cautions that go with the works in a group. */
final class WorkCautions {
  /**
   * @param unfiled words for the material or the coating that no moderator has filed, or null
   */
  private record Work(String material, String coating, String unfiled) {}

  private WorkCautions() {}

  /** Each rule once, bans first. A range over many works keeps to bans and general cautions. */
  static List<Caution> of(Group group, Cautions cautions) {
    Set<Work> works = works(group);
    Map<String, Caution> found = new LinkedHashMap<>();
    LaserSource source = group.key().band().usualSource().orElse(null);
    for (Work work : works) {
      Process process = group.key().process();
      Stream.concat(
              cautions.forWork(work.material(), work.coating(), process, null, source).stream(),
              work.unfiled() == null
                  ? Stream.empty()
                  : cautions.ofWords(work.unfiled(), process, source).stream())
          .forEach(caution -> found.putIfAbsent(caution.rule().id(), caution));
    }
    if (works.size() > ConsensusLimits.CAUTIONED_WORKS) {
      found.values().removeIf(caution -> !caution.isGeneral() && !caution.rule().isBan());
    }
    List<Caution> all = new ArrayList<>(found.values());
    all.sort(
        Comparator.comparing((Caution c) -> c.rule().weight()).thenComparing(Caution::isGeneral));
    return List.copyOf(all);
  }

  private static Set<Work> works(Group group) {
    Set<Codes> codes = new LinkedHashSet<>();
    for (int row : group.rows()) {
      int material = group.code(Property.MATERIAL, row);
      int coating = group.code(Property.COATING, row);
      boolean waits = material == TrialColumns.NOT_FILED || coating == TrialColumns.NOT_FILED;
      codes.add(
          new Codes(
              material,
              coating,
              waits ? group.code(Property.UNFILED, row) : TrialColumns.NOT_GIVEN));
    }
    PropertyLabels labels = group.columns().labels();
    Set<Work> works = new LinkedHashSet<>();
    for (Codes one : codes) {
      works.add(
          new Work(
              value(labels, Property.MATERIAL, one.material()),
              value(labels, Property.COATING, one.coating()),
              one.unfiled() < 0 ? null : labels.label(Property.UNFILED, one.unfiled())));
    }
    if (works.isEmpty()) {
      works.add(new Work(null, null, null));
    }
    return works;
  }

  /** A work as the columns hold it. */
  private record Codes(int material, int coating, int unfiled) {}

  private static String value(PropertyLabels labels, Property property, int code) {
    return code < 0 ? null : labels.value(property, code);
  }
}
