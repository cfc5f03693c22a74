package club.emberwell.exchange;

import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.Gone;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;

/** Lets the invented members flag what moderators may try their hand at. */
@ApplicationScoped
class ScenarioFlags {
  private final Flags flags;

  ScenarioFlags(Flags flags) {
    this.flags = flags;
  }

  /** Adds what is missing; what was answered since stays answered. */
  void load(List<ScenarioFlag> lines, Map<String, Actor> people) {
    for (ScenarioFlag line : lines) {
      try {
        flags.flag(people.get(line.by()), line.ref(), line.raised());
      } catch (EntryUnknown | Gone | EntryRefused e) {
        continue; // a moderator decided since
      }
    }
  }
}
