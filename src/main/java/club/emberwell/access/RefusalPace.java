package club.emberwell.access;

import club.emberwell.access.problem.ProblemKind;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalLong;

/** How many refusals of one kind are told, so that whoever asks for many fills no disk. */
class RefusalPace {
  private final int most;
  private final Duration span;
  private final Map<ProblemKind, Told> told = new EnumMap<>(ProblemKind.class);

  RefusalPace(int most, Duration span) {
    this.most = most;
    this.span = span;
  }

  private static final class Told {
    private Instant until = Instant.MIN;
    private int lines;
    private long leftOut;
  }

  /** How many were left out since the last one that was told; empty where this is left out too. */
  synchronized OptionalLong tell(ProblemKind kind, Instant now) {
    Told of = told.computeIfAbsent(kind, any -> new Told());
    if (!now.isBefore(of.until)) {
      of.until = now.plus(span);
      of.lines = 0;
    }
    if (of.lines == most) {
      of.leftOut++;
      return OptionalLong.empty();
    }
    long before = of.leftOut;
    of.lines++;
    of.leftOut = 0;
    return OptionalLong.of(before);
  }
}
