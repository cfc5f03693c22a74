package club.emberwell;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The rules of the architecture below a root package, so that they hold for a fixture as well. */
record ArchitectureRules(String root) {
  /** Bottom to top: each uses only itself and those before it; the doors do not use each other. */
  static final List<String> ORDER =
      List.of(
          "listing",
          "remark",
          "quantity",
          "laser",
          "stats",
          "keep",
          "catalog",
          "member",
          "bench",
          "entry",
          "tag",
          "report",
          "search",
          "consensus",
          "grid",
          "sample",
          "lot",
          "recipe",
          "eyewear",
          "room",
          "fixture",
          "card",
          "talk",
          "desk",
          "hook",
          "exchange",
          "access",
          "api",
          "web",
          "launch");

  /** What people and programs come in by. */
  private static final Set<String> DOORS = Set.of("api", "web");

  /** What runs statements; exceptions and the results of repositories may travel. */
  private static final Pattern STATEMENTS =
      Pattern.compile(
          "javax?\\.sql\\.(?!SQLException).*"
              + "|jakarta\\.persistence\\.(EntityManager|\\w*Query|Tuple|criteria\\..*)"
              + "|org\\.hibernate\\.(\\w*Session|query\\..*)");

  ArchRule eachPackageUsesOnlyThoseBelow() {
    return classes().that().resideInAPackage(root + "..").should(useOnlyPackagesBelow());
  }

  ArchRule theFourLowestKnowNeitherFrameworkNorDatabase() {
    return noClasses()
        .that()
        .resideInAnyPackage(in("listing", "remark", "quantity", "laser", "stats"))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "io.quarkus..", "jakarta..", "java.sql..", "javax.sql..", "org.jboss..");
  }

  ArchRule onlyTheSearchKnowsItsLibrary() {
    return noClasses()
        .that()
        .resideOutsideOfPackages(in("search"))
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.apache.lucene..");
  }

  ArchRule onlyApiAndPagesSpeakHttp() {
    return noClasses()
        .that()
        .resideOutsideOfPackages(in("access", "api", "web"))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("jakarta.ws.rs..", "org.jboss.resteasy..", "io.quarkus.qute..");
  }

  ArchRule onlyEntitiesAndRepositoriesPersist() {
    return noClasses()
        .that(areNeitherEntitiesNorRepositories())
        .and()
        .resideOutsideOfPackages(in("keep", "launch"))
        .should()
        .dependOnClassesThat()
        .haveNameMatching(STATEMENTS.pattern());
  }

  ArchRule noClassIsNamedForNothing() {
    return noClasses()
        .should()
        .haveSimpleNameEndingWith("Util")
        .orShould()
        .haveSimpleNameEndingWith("Utils")
        .orShould()
        .haveSimpleNameEndingWith("Manager")
        .orShould()
        .haveSimpleNameEndingWith("Helper");
  }

  /** The sign-in provider an operator configured, webhooks where owners want them, the doctor. */
  ArchRule nothingCallsOtherMachines() {
    return noClasses()
        .that()
        .haveNameNotMatching(
            Pattern.quote(root)
                + "\\.(member\\.sso\\.ProviderClient|hook\\.HookCall"
                + "|launch\\.PublicUrlFinding)(\\$.*)?")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "java.net.http..",
            "jakarta.ws.rs.client..",
            "org.eclipse.microprofile.rest.client..",
            "io.vertx..client..",
            "com.nimbusds.jose.jwk.source..",
            "com.nimbusds.oauth2.sdk.http..",
            "com.nimbusds.openid.connect.sdk.op..",
            "org.apache.http..")
        .orShould()
        .dependOnClassesThat()
        .haveNameMatching("io\\.vertx\\.core\\.(http\\.HttpClient|net\\.NetClient).*")
        .orShould()
        .dependOnClassesThat()
        .areAssignableTo(java.net.URLConnection.class);
  }

  ArchRule onlyTheLaunchPrintsOnTheConsole() {
    DescribedPredicate<JavaClass> streams =
        DescribedPredicate.describe("System", type -> type.getName().equals("java.lang.System"));
    return noClasses()
        .that()
        .resideOutsideOfPackages(in("launch"))
        .should(
            new ArchCondition<>("write to System.out or System.err") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                type.getFieldAccessesFromSelf().stream()
                    .filter(access -> streams.test(access.getTargetOwner()))
                    .forEach(
                        access ->
                            events.add(
                                SimpleConditionEvent.satisfied(type, access.getDescription())));
              }
            });
  }

  private String[] in(String... packages) {
    return Stream.of(packages).map(name -> root + "." + name + "..").toArray(String[]::new);
  }

  private ArchCondition<JavaClass> useOnlyPackagesBelow() {
    return new ArchCondition<>("use only packages below their own") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
          JavaClass target = dependency.getTargetClass();
          if (level(target) > level(type) || isTheOtherDoor(type, target)) {
            events.add(SimpleConditionEvent.violated(type, dependency.getDescription()));
          }
        }
      }
    };
  }

  private boolean isTheOtherDoor(JavaClass type, JavaClass target) {
    String own = feature(type);
    return DOORS.contains(own) && DOORS.contains(feature(target)) && !own.equals(feature(target));
  }

  /** The place in the order; below all for what is not ours. */
  private int level(JavaClass type) {
    String feature = feature(type);
    int level = ORDER.indexOf(feature);
    if (level < 0 && !feature.isEmpty()) {
      throw new AssertionError("the package " + feature + " has no place in the order");
    }
    return level;
  }

  /** The package below the root; empty for what is not ours. */
  private String feature(JavaClass type) {
    String name = type.getPackageName();
    return name.startsWith(root + ".") ? name.substring(root.length() + 1).split("\\.")[0] : "";
  }

  private static DescribedPredicate<JavaClass> areNeitherEntitiesNorRepositories() {
    return DescribedPredicate.describe(
        "are neither entities nor repositories", type -> !persists(outermost(type)));
  }

  /** A repository is named so, or {@code Stored…} where it is the stored kind of an interface. */
  private static boolean persists(JavaClass type) {
    return type.getSimpleName().endsWith("Repository")
        || type.getSimpleName().startsWith("Stored")
        || type.isAnnotatedWith("jakarta.persistence.Entity")
        || type.isAnnotatedWith("jakarta.persistence.Embeddable")
        || type.isAnnotatedWith("jakarta.persistence.MappedSuperclass")
        || type.isAnnotatedWith("jakarta.persistence.Converter");
  }

  private static JavaClass outermost(JavaClass type) {
    return type.getEnclosingClass().map(ArchitectureRules::outermost).orElse(type);
  }
}
