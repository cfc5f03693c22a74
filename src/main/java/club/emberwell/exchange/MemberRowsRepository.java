package club.emberwell.exchange;

import club.emberwell.quantity.UtcTime;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.hibernate.query.MutationQuery;

/** Runs what the contributions to download and erasure say about a member's rows. */
@ApplicationScoped
public class MemberRowsRepository {
  private static final int FETCH = 200;

  /** A time as PostgreSQL writes it into JSON. */
  private static final Pattern TIME =
      Pattern.compile(
          "\"(\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)?[+-]\\d\\d:\\d\\d)\"");

  private final Session db;

  MemberRowsRepository(Session db) {
    this.db = db;
  }

  /**
   * The rows of a statement as JSON texts, read as they are asked for.
   *
   * @param select takes {@code :member}
   */
  public Stream<String> json(String select, UUID member) {
    return db.createNativeQuery(
            "select cast(to_jsonb(t) as text) from (%s) t".formatted(select), String.class)
        .setParameter("member", member)
        .setFetchSize(FETCH)
        .getResultStream()
        .map(MemberRowsRepository::sameTimes);
  }

  /** A row whose times are written as those of answers; the database leaves zeros out. */
  private static String sameTimes(String row) {
    return TIME.matcher(row)
        .replaceAll(
            time -> '"' + UtcTime.of(OffsetDateTime.parse(time.group(1)).toInstant()) + '"');
  }

  /** The ids a statement finds. */
  public List<UUID> ids(String select, UUID member) {
    return db.createNativeQuery(select, UUID.class).setParameter("member", member).getResultList();
  }

  /** One picture; photos are read one by one, because together they may be large. */
  byte[] picture(UUID photo) {
    return bytes("select picture from photo where id = :id", photo);
  }

  /** One picture of a form that was not posted. */
  byte[] parkedPicture(UUID photo) {
    return bytes("select picture from parked_photo where id = :id", photo);
  }

  /** The picture of one grid. */
  public byte[] gridPicture(UUID grid) {
    return bytes("select picture from grid_photo where grid_id = :id", grid);
  }

  /** The one picture of a lot or a fixture. */
  public byte[] keptPicture(UUID entry) {
    return bytes("select picture from kept_photo where entry_id = :id", entry);
  }

  private byte[] bytes(String select, UUID id) {
    return db.createNativeQuery(select, byte[].class).setParameter("id", id).getSingleResult();
  }

  /**
   * Runs statements in their order.
   *
   * @param statements each ends with a semicolon and its line; may take {@code :member}
   */
  void run(String statements, UUID member) {
    for (String sql : statements.split(";\n")) {
      MutationQuery query = db.createNativeMutationQuery(sql);
      if (sql.contains(":member")) {
        query.setParameter("member", member);
      }
      query.executeUpdate();
    }
  }
}
