package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.TimeZone;
import java.util.logging.Level;
import org.jboss.logmanager.ExtLogRecord;
import org.jboss.logmanager.formatters.PatternFormatter;
import org.junit.jupiter.api.Test;

/** A line of the log as an operator reads it. */
class LogFormatTest {
  /** OWASP ASVS 5.0, V16.2.2; RFC 3339. */
  @Test
  void aLineSaysWhenInUtcWhateverTheMachineSays() {
    String format = Given.defaults().getProperty("quarkus.log.console.format");
    TimeZone before = TimeZone.getDefault();
    TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
    try {
      ExtLogRecord line =
          new ExtLogRecord(Level.INFO, "Emberwell opens", "club.emberwell.launch.Banner");
      line.setLoggerName("club.emberwell.launch.Banner");
      line.setInstant(Instant.parse("2026-11-27T08:09:10Z"));
      line.putMdc("request", "a-request");
      assertEquals(
          "2026-11-27T08:09:10Z INFO  [a-request] c.e.l.Banner Emberwell opens",
          new PatternFormatter(format).format(line).strip());
    } finally {
      TimeZone.setDefault(before);
    }
  }
}
