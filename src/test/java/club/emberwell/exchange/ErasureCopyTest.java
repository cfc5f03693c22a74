package club.emberwell.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.exchange.ErasureLedger.Entry;
import club.emberwell.exchange.PersonalData.Choice;
import club.emberwell.keep.Erased;
import club.emberwell.keep.ErasedFile;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

/** Who left is also written beside the database. */
@QuarkusTest
class ErasureCopyTest {
  @Inject Eraser eraser;
  @Inject ErasureCopy copy;

  @ConfigProperty(name = "emberwell.home")
  Path home;

  @Test
  void whoeverLeavesStandsInTheFileOfTheHomeOnce() throws Exception {
    UUID member = UUID.fromString(People.join().id());
    assertTrue(eraser.carryOut(new Entry(member, Choice.REMOVE, Instant.now())));
    copy.copy();
    List<Erased> written = ErasedFile.of(home).all();
    assertEquals(
        List.of("remove"),
        written.stream().filter(one -> one.member().equals(member)).map(Erased::choice).toList());
    copy.copy();
    assertEquals(written, ErasedFile.of(home).all());
  }
}
