package club.emberwell.web.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.ProblemException;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.outside.SecurityReports.Address;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

@QuarkusTest
class WellKnownTest {
  @Inject ClubOptions club;
  @Inject PublicUrl url;

  /** What an operator says of holes in the server. */
  private record Said(Optional<List<Address>> contact, Optional<Address> policy)
      implements SecurityReports {}

  @Test
  void whoFindsAHoleIsToldWhomToTellOnlyWhereTheOperatorSaidSo() {
    Said said =
        new Said(
            Optional.of(
                List.of(new Address("sec@club.example"), new Address("tel:+1-201-555-0123"))),
            Optional.of(new Address("https://club.example/security")));
    List<String> lines = new WellKnown(said, club, url).security().lines().toList();
    assertEquals("Contact: mailto:sec@club.example", lines.get(0));
    assertEquals("Contact: tel:+1-201-555-0123", lines.get(1));
    Instant expires = Instant.parse(lines.get(2).replace("Expires: ", ""));
    assertTrue(expires.isAfter(Instant.now()), lines.get(2));
    assertTrue(lines.contains("Policy: https://club.example/security"), lines.toString());
    assertThrows(IllegalArgumentException.class, () -> new Address("http://club.example"));
    assertThrows(IllegalArgumentException.class, () -> new Address("somebody"));
    WellKnown silent = new WellKnown(new Said(Optional.empty(), Optional.empty()), club, url);
    assertThrows(ProblemException.class, silent::security);
  }
}
