package club.emberwell.report;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.util.Locale;

/** What a report is called where it stands in one line among other things. */
public final class ReportTitle {
  private ReportTitle() {}

  /** Names it by what was worked on, how and with what. */
  public static String of(String work, String process, String source) {
    String how = Process.of(process).orElseThrow().label().toLowerCase(Locale.ROOT);
    return work + ": " + how + ", " + LaserSource.of(source).orElseThrow().label();
  }
}
