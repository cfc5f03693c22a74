package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

@QuarkusTest
class BareQuarkusTest {
  @Inject DataSource database;

  @Test
  void aTestWithoutAnyAnnotationOfItsOwnTalksToPostgres17() throws SQLException {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement();
        ResultSet version = statement.executeQuery("SHOW server_version_num")) {
      version.next();
      assertEquals(17, version.getInt(1) / 10_000);
    }
  }
}
