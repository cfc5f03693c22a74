package club.emberwell.member.club;

import club.emberwell.member.Licence;
import club.emberwell.member.Secrets;
import club.emberwell.remark.Coded;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.BlockingOperationControl;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;

/**
 * What the club decided about itself, from the database. A node keeps a copy for a few seconds,
 * because reading is asked about on every request.
 */
@ApplicationScoped
public class ClubOptions {
  /** How people come in. */
  public enum Door implements Coded {
    OPEN,
    REQUEST,
    INVITATION;

    @Override
    public String code() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * All that owners decide.
   *
   * @param localSignIn whether names and passwords of this server count
   * @param notes what strangers read about the club; several lines
   * @param photoMegabytes of pictures that the club keeps for one member
   * @param version for If-Match
   */
  public record Card(
      String name,
      Door door,
      boolean readingPublic,
      boolean localSignIn,
      Terms terms,
      String notes,
      int photoMegabytes,
      long version) {
    public String licence() {
      return terms.licence();
    }

    public Licence dataLicence() {
      return terms.dataLicence();
    }
  }

  /**
   * How members share.
   *
   * @param licence in words
   * @param dataLicence SPDX id for what members post who chose none
   */
  public record Terms(String licence, Licence dataLicence) {}

  /** Of pictures that the club keeps for one member, until owners say otherwise. */
  static final int PHOTO_MEGABYTES_USUAL = 500;

  private static final long MEGABYTE = 1024 * 1024;

  private static final Duration FRESH = Duration.ofSeconds(5);
  private static final long STALE = Long.MIN_VALUE / 2;
  private static final String DOOR = "door";
  private static final String READING = "reading";
  private static final String CLUB_NAME = "club-name";
  private static final String LOCAL_SIGN_IN = "local-sign-in";
  private static final String LICENCE = "licence";
  private static final String DATA_LICENCE = "data-licence";
  private static final String NOTES = "notes";
  private static final String PHOTO_MEGABYTES = "photo-megabytes";
  private static final String VERSION = "club-version";
  private static final String EXAMPLE = "example";
  private static final String ON = "on";
  private static final String FORM_KEY = "form-key";
  private static final String PUBLIC = "public";

  private final ClubOptionRepository rows;
  private volatile Copy copy = new Copy(Map.of(), STALE);

  ClubOptions(ClubOptionRepository rows) {
    this.rows = rows;
  }

  public Door door() {
    return Coded.of(Door.class, text(DOOR)).orElseThrow();
  }

  public void door(Door door) {
    set(DOOR, door.code());
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

  /** Whether names and passwords of this server count; else only the sign-in provider's word. */
  public boolean localSignIn() {
    return ON.equals(text(LOCAL_SIGN_IN));
  }

  public void localSignIn(boolean on) {
    set(LOCAL_SIGN_IN, on ? ON : "off");
  }

  /** Bytes of pictures that the club keeps for one member. */
  public long photoBytes() {
    return photoMegabytes(current().values()) * MEGABYTE;
  }

  public void photoMegabytes(int most) {
    set(PHOTO_MEGABYTES, Integer.toString(most));
  }

  private static int photoMegabytes(Map<String, String> values) {
    String decided = values.get(PHOTO_MEGABYTES);
    return decided == null ? PHOTO_MEGABYTES_USUAL : Integer.parseInt(decided);
  }

  /** Whether an invented club is here as an example, or on its way. */
  public boolean hasExample() {
    return ON.equals(text(EXAMPLE));
  }

  public void example(boolean here) {
    set(EXAMPLE, here ? ON : "off");
  }

  /** All of it as one, of one moment. */
  public Card card() {
    Map<String, String> values = current().values();
    return new Card(
        values.get(CLUB_NAME),
        Coded.of(Door.class, values.get(DOOR)).orElseThrow(),
        PUBLIC.equals(values.get(READING)),
        ON.equals(values.get(LOCAL_SIGN_IN)),
        new Terms(
            values.get(LICENCE), Coded.of(Licence.class, values.get(DATA_LICENCE)).orElseThrow()),
        values.get(NOTES),
        photoMegabytes(values),
        Long.parseLong(values.get(VERSION)));
  }

  /** Stores all of it in the caller's transaction; false when the version moved on. */
  boolean store(Card card) {
    boolean stored = rows.advance(VERSION, card.version());
    if (stored) {
      clubName(card.name());
      door(card.door());
      readingPublic(card.readingPublic());
      localSignIn(card.localSignIn());
      set(LICENCE, card.licence());
      set(DATA_LICENCE, card.dataLicence().code());
      set(NOTES, card.notes());
      photoMegabytes(card.photoMegabytes());
    }
    return stored;
  }

  /** Sets doors that nobody has set yet: how a new club starts. */
  public void begin(Door door, boolean openReading) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              rows.add(DOOR, door.code());
              rows.add(READING, openReading ? PUBLIC : "members");
              // made now, because a page that refuses somebody cannot wait for the database
              rows.add(FORM_KEY, Secrets.random());
            });
    copy = load();
  }

  /** Reads again at the next question. */
  void forget() {
    copy = new Copy(copy.values(), STALE);
  }

  /** The club's key for signing form tokens, made at first need and shared by all nodes. */
  public String formKey() {
    String key = current().values().get(FORM_KEY);
    if (key == null) {
      QuarkusTransaction.requiringNew().run(() -> rows.add(FORM_KEY, Secrets.random()));
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
      throw new IllegalStateException("the option " + key + " is missing");
    }
    return value;
  }

  private Copy current() {
    if (!fresh()) {
      Copy last = copy;
      if (!last.values().isEmpty() && !BlockingOperationControl.isBlockingAllowed()) {
        // refusals are told on a thread that may not wait for the database
        return last;
      }
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
    QuarkusTransaction.joiningExisting().run(() -> rows.replace(key, value));
    forget();
  }

  private record Copy(Map<String, String> values, long readAt) {}
}
