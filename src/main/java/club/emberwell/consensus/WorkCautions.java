package club.emberwell.consensus;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.laser.LaserSource;
import club.emberwell.search.column.TrialColumns.PropertyLabels;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The cautions that go with the works in a group. */
final class WorkCautions {
  private record Work(String material, String coating) {}

  private WorkCautions() {}

  /** Each rule once, bans first. A range over many works keeps to bans and general cautions. */
  static List<Caution> of(Group group, Cautions cautions) {
    Set<Work> works = works(group);
    Map<String, Caution> found = new LinkedHashMap<>();
    LaserSource source = group.key().band().usualSource().orElse(null);
    for (Work work : works) {
      cautions
          .forWork(work.material(), work.coating(), group.key().process(), null, source)
          .forEach(caution -> found.putIfAbsent(caution.rule().id(), caution));
    }
    if (works.size() > ConsensusLimits.CAUTIONED_WORKS) {
      found.values().removeIf(caution -> !caution.isGeneral() && !caution.rule().isBan());
    }
    List<Caution> all = new ArrayList<>(found.values());
    all.sort(
        Comparator.comparing((Caution c) -> c.rule().weight())
            .thenComparing(Caution::isGeneral));
    return List.copyOf(all);
  }

  private static Set<Work> works(Group group) {
    Set<Long> codes = new LinkedHashSet<>();
    for (int row : group.rows()) {
      codes.add(
          (long) group.code(Property.MATERIAL, row) << Integer.SIZE
              | group.code(Property.COATING, row) & 0xffffffffL);
    }
    Set<Work> works = new LinkedHashSet<>();
    PropertyLabels labels = group.columns().labels();
    for (long code : codes) {
      works.add(
          new Work(
              value(labels, Property.MATERIAL, (int) (code >> Integer.SIZE)),
              value(labels, Property.COATING, (int) code)));
    }
    if (works.isEmpty()) {
      works.add(new Work(null, null));
    }
    return works;
  }

  private static String value(PropertyLabels labels, Property property, int code) {
    return code < 0 ? null : labels.value(property, code);
  }
}
