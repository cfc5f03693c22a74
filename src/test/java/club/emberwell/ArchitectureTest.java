package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.EvaluationResult;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The arrows between packages, and for each rule a fixture that breaks it. */
class ArchitectureTest {
  private static final String ROOT = "club.emberwell";
  private static final JavaClasses PROGRAM =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOT);
  private static final JavaClasses FIXTURES =
      new ClassFileImporter().importPackages("fixture.club");

  /** A rule and the classes of the fixture that break it. */
  record Case(Function<ArchitectureRules, ArchRule> rule, String... offenders) {}

  static Stream<Case> cases() {
    return Stream.of(
        new Case(
            ArchitectureRules::eachPackageUsesOnlyThoseBelow, "UsesAHigherPackage", "UsesTheApi"),
        new Case(
            ArchitectureRules::theFourLowestKnowNeitherFrameworkNorDatabase,
            "KnowsTheDatabase",
            "KnowsTheFramework"),
        new Case(ArchitectureRules::onlyTheSearchKnowsItsLibrary, "SearchesByItself"),
        new Case(ArchitectureRules::onlyApiAndPagesSpeakHttp, "AnswersRequests", "RendersPages"),
        new Case(ArchitectureRules::onlyEntitiesAndRepositoriesPersist, "WritesRows"),
        new Case(ArchitectureRules::noClassIsNamedForNothing, "MemberUtils"),
        new Case(ArchitectureRules::nothingCallsOtherMachines, "CallsOut"),
        new Case(ArchitectureRules::onlyTheLaunchPrintsOnTheConsole, "PrintsOnTheConsole"));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theProgramKeepsTheRule(Case one) {
    one.rule().apply(new ArchitectureRules(ROOT)).check(PROGRAM);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theFixtureShowsThatTheRuleCanFail(Case one) {
    EvaluationResult result =
        one.rule().apply(new ArchitectureRules("fixture.club")).evaluate(FIXTURES);
    String report = result.getFailureReport().toString();
    for (String offender : one.offenders()) {
      assertTrue(report.contains(offender), () -> offender + " went unnoticed: " + report);
    }
  }

  @Test
  void everyPackageOfTheOrderIsThere() {
    Set<String> found =
        PROGRAM.stream()
            .map(type -> type.getPackageName().substring(ROOT.length()))
            .filter(name -> !name.isEmpty())
            .map(name -> name.substring(1).split("\\.")[0])
            .collect(Collectors.toSet());
    assertEquals(Set.copyOf(ArchitectureRules.ORDER), found);
  }
}
