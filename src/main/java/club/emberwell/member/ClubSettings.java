package club.emberwell.member;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;

/**
 * What the club decided about itself, from the database. A node keeps a copy for a few seconds,
 * because reading is asked about on every request.
 */
@ApplicationScoped
public class ClubSettings {
  /** How people come in. */
  public enum Door {
    OPEN,
    REQUEST,
    INVITATION
  }

  private static final Duration FRESH = Duration.ofSeconds(5);
  private static final String DOOR = "door";
  private static final String READING = "reading";
  private static final String CLUB_NAME = "club-name";
  private static final String FORM_KEY = "form-key";
  private static final String PUBLIC = "public";

  private final SettingRepository rows;
  private final ObjectMapper json;
  private volatile Copy copy = new Copy(Map.of(), Long.MIN_VALUE / 2);

  ClubSettings(SettingRepository rows, ObjectMapper json) {
    this.rows = rows;
    this.json = json;
  }

  public Door door() {
    return Door.valueOf(text(DOOR).toUpperCase(Locale.ROOT));
  }

  public void door(Door door) {
    set(DOOR, door.name().toLowerCase(Locale.ROOT));
  }

  /** Whether strangers may read. */
  public boolean readingPublic() {
    return PUBLIC.equals(text(READING));
  }

  public void readingPublic(boolean open) {
    set(READING, open ? PUBLIC : "members");
  }

  public String clubName() {
    return text(CLUB_NAME);
  }

  public void clubName(String name) {
    set(CLUB_NAME, name);
  }

  /** The club's key for signing form tokens, made at first need and shared by all nodes. */
  public String formKey() {
    String key = current().values().get(FORM_KEY);
    if (key == null) {
      QuarkusTransaction.requiringNew().run(() -> rows.add(FORM_KEY, quoted(Secrets.random())));
      copy = load();
      key = text(FORM_KEY);
    }
    return key;
  }

  /** Whether an answer is at hand without asking the database. */
  public boolean fresh() {
    return System.nanoTime() - copy.readAt() < FRESH.toNanos();
  }

  private String text(String key) {
    String value = current().values().get(key);
    if (value == null) {
      throw new IllegalStateException("the setting " + key + " is missing");
    }
    return value;
  }

  private Copy current() {
    if (!fresh()) {
      Copy last = copy;
      try {
        copy = load();
      } catch (RuntimeException e) {
        if (last.values().isEmpty()) {
          throw e;
        }
        // the database is away: what was true a moment ago still is
        copy = new Copy(last.values(), System.nanoTime());
      }
    }
    return copy;
  }

  private Copy load() {
    long now = System.nanoTime();
    Map<String, String> values = QuarkusTransaction.requiringNew().call(rows::all);
    return new Copy(values, now);
  }

  private void set(String key, String value) {
    QuarkusTransaction.joiningExisting().run(() -> rows.replace(key, quoted(value)));
    copy = new Copy(Map.of(), Long.MIN_VALUE / 2);
  }

  private String quoted(String value) {
    try {
      return json.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private record Copy(Map<String, String> values, long readAt) {}
}
