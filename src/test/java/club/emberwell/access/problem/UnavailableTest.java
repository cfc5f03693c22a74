package club.emberwell.access.problem;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;

/** States by PostgreSQL 17 documentation, appendix A. */
class UnavailableTest {
  private static RuntimeException by(Throwable cause) {
    return new IllegalStateException("the credential could not be looked up", cause);
  }

  @Test
  void aDatabaseThatIsAwayIsSeenBehindWhateverFailed() {
    assertTrue(Unavailable.is(by(by(new SQLException("no connection", "08006")))));
    assertTrue(Unavailable.is(by(new SQLException("none in time", (String) null))));
    assertFalse(Unavailable.is(by(new SQLException("a key twice", "23505"))));
    assertFalse(Unavailable.is(by(new IOException("elsewhere"))));
  }

  @Test
  void alsoWhereATransactionCouldNotBeCommitted() {
    Exception rolledBack = new Exception("Could not commit transaction.");
    rolledBack.addSuppressed(by(new SQLException("the line is cut", "08003")));
    assertTrue(Unavailable.is(by(rolledBack)));
    rolledBack.addSuppressed(rolledBack.getSuppressed()[0]);
    assertTrue(Unavailable.is(by(rolledBack)), "however it is tied");
  }

  @Test
  void aFullDiskIsOne() {
    assertTrue(Unavailable.isFull(by(new SQLException("no room", "53100"))));
    assertTrue(Unavailable.isFull(by(new IOException("write: No space left on device"))));
    assertFalse(Unavailable.isFull(by(new IOException("broken pipe"))));
  }
}
