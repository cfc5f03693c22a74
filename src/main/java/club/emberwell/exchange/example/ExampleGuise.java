package club.emberwell.exchange.example;

import club.emberwell.entry.Origin;
import club.emberwell.exchange.ScenarioGuise;
import club.emberwell.member.MemberLimits;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/**
 * Invented people among real ones: each name says that it is invented, on whatever page and in
 * whatever file it stands, and ids are of one loading, so that another can follow.
 */
final class ExampleGuise implements ScenarioGuise {
  private static final Pattern ID =
      Pattern.compile("\\b\\p{XDigit}{8}-(?:\\p{XDigit}{4}-){3}\\p{XDigit}{12}\\b");

  private static final Pattern AUTHOR = Pattern.compile("(\"by\"\\s*:\\s*\"[^\"]+)\"");
  private static final Pattern FIRST_CELL = Pattern.compile("^([a-z0-9][a-z0-9_-]*);");

  private final UUID run;
  private final Consumer<UUID> invented;
  private final Progress progress;

  /** Is told how far the loading is. */
  interface Progress {
    void stored(int done, int total);
  }

  ExampleGuise(UUID run, Consumer<UUID> invented, Progress progress) {
    this.run = run;
    this.invented = invented;
    this.progress = progress;
  }

  @Override
  public boolean ownClub() {
    return false;
  }

  @Override
  public String line(String line) {
    if (!line.startsWith("{")) {
      return FIRST_CELL.matcher(line).replaceFirst("$1" + MemberLimits.INVENTED + ";");
    }
    String named = AUTHOR.matcher(line).replaceAll("$1" + MemberLimits.INVENTED + "\"");
    return ID.matcher(named).replaceAll(id -> ofThisRun(id.group()).toString());
  }

  private UUID ofThisRun(String id) {
    return UUID.nameUUIDFromBytes((run + "/" + id).getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public Origin origin() {
    return Origin.EXAMPLE;
  }

  @Override
  public void joined(UUID member) {
    invented.accept(member);
  }

  @Override
  public void stored(int done, int total) {
    progress.stored(done, total);
  }
}
