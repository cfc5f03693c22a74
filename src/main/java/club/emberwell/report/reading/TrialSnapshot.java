package club.emberwell.report.reading;

import club.emberwell.laser.Effect;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import java.util.List;

/** One trial as interpreted; canonical units. */
public record TrialSnapshot(
    Integer row,
    Integer column,
    Settings settings,
    Derived derived,
    Effect effect,
    Integer quality,
    List<String> defects) {}
