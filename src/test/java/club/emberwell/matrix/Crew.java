package club.emberwell.matrix;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;

/** People with a session and a token, put straight into the database: the matrix needs many. */
@ApplicationScoped
public class Crew {
  private final EntityManager db;

  Crew(EntityManager db) {
    this.db = db;
  }

  /**
   * Somebody.
   *
   * @param cookie secret of a session
   * @param session the session's own id
   */
  record Somebody(UUID id, String handle, String cookie, UUID session, String token, UUID tokenId) {
    static final Somebody NOBODY = new Somebody(null, "", null, null, null, null);
  }

  Somebody person(String role, String status) {
    return person(role, status, "read write moderate");
  }

  Somebody person(String role, String status, String scopes) {
    UUID id = UUID.randomUUID();
    String handle = "m" + id.toString().substring(0, 13);
    String secret = "s" + UUID.randomUUID();
    String token = "ew_" + UUID.randomUUID();
    UUID session = UUID.randomUUID();
    UUID tokenId = UUID.randomUUID();
    run(
        "insert into member (id, handle, role, status) values ('%s', '%s', '%s', '%s')"
            .formatted(id, handle, role, status),
        ("insert into session (id_hash, id, member_id, label, expires_at)"
                + " values ('\\x%s', '%s', '%s', 'test', now() + interval '1 hour')")
            .formatted(sha256(secret), session, id),
        ("insert into api_token (id, member_id, hash, label, scopes, expires_at)"
                + " values ('%s', '%s', '\\x%s', 'test', '%s', now() + interval '1 hour')")
            .formatted(tokenId, id, sha256(token), scopes));
    return new Somebody(id, handle, secret, session, token, tokenId);
  }

  void run(String... statements) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              for (String sql : statements) {
                db.createNativeQuery(sql).executeUpdate();
              }
            });
  }

  String one(String sql) {
    return QuarkusTransaction.requiringNew()
        .call(() -> String.valueOf(db.createNativeQuery(sql).getSingleResult()));
  }

  private static String sha256(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
