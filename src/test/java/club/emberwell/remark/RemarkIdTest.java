package club.emberwell.remark;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The registry of remarks: complete, in use, and what strangers and stored entries know. */
class RemarkIdTest {
  private static final JavaClasses MAIN =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("club.emberwell");

  @Test
  void everyIdIsUsedSomewhere() {
    Set<String> used =
        MAIN.get(RemarkId.class).getFieldAccessesToSelf().stream()
            .filter(access -> !access.getOriginOwner().isEquivalentTo(RemarkId.class))
            .map(access -> access.getTarget().getName())
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> known =
        Stream.of(RemarkId.values()).map(Enum::name).collect(Collectors.toCollection(TreeSet::new));
    assertEquals(known, used);
  }

  @Test
  void aRemarkIsMadeWithAnIdOfTheRegistryOnly() {
    ArchRuleDefinition.noClasses()
        .that()
        .resideOutsideOfPackage("club.emberwell.remark")
        .should()
        .callConstructor(
            Remark.class, String.class, Severity.class, String.class, String.class, List.class)
        .check(MAIN);
  }

  @Test
  void noIdThatStrangersOrStoredEntriesKnowChanges() throws IOException {
    try (InputStream golden = RemarkIdTest.class.getResourceAsStream("/remark-ids.txt")) {
      List<String> known =
          new String(golden.readAllBytes(), StandardCharsets.UTF_8).lines().sorted().toList();
      assertEquals(known, Stream.of(RemarkId.values()).map(RemarkId::code).sorted().toList());
    }
  }
}
