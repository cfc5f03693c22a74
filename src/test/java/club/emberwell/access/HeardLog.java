package club.emberwell.access;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.jboss.logging.MDC;

/** What is written into the log meanwhile, with stacks, as one line of text each. */
public final class HeardLog extends Handler implements AutoCloseable {
  private final List<Line> lines = new CopyOnWriteArrayList<>();
  private final Logger logger;
  private final Level before;

  /**
   * A line.
   *
   * @param request the name of the request it tells of; or null
   */
  public record Line(String logger, String text, String request) {}

  /** Listens to a logger and all below it from this level on; tests hear of warnings only. */
  public HeardLog(String logger, Level level) {
    this.logger = Logger.getLogger(logger);
    this.before = this.logger.getLevel();
    this.logger.setLevel(level);
    this.logger.addHandler(this);
  }

  public List<Line> lines() {
    return lines;
  }

  public List<String> texts() {
    return lines.stream().map(Line::text).toList();
  }

  @Override
  public void publish(LogRecord line) {
    StringWriter text = new StringWriter();
    text.append(new SimpleFormatter().formatMessage(line));
    if (line.getThrown() != null) {
      line.getThrown().printStackTrace(new PrintWriter(text));
    }
    Object request = MDC.get(RequestIds.LOGGED_AS);
    lines.add(
        new Line(line.getLoggerName(), text.toString(), request == null ? null : "" + request));
  }

  @Override
  public void flush() {
    // kept as it comes
  }

  @Override
  public void close() {
    logger.removeHandler(this);
    logger.setLevel(before);
  }
}
