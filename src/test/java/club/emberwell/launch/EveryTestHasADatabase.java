package club.emberwell.launch;

import io.quarkus.test.common.TestResourceScope;
import io.quarkus.test.common.WithTestResource;

/** Carries the annotation that gives all {@code @QuarkusTest} classes their database. */
@WithTestResource(value = DatabaseTestResource.class, scope = TestResourceScope.GLOBAL)
final class EveryTestHasADatabase {
  private EveryTestHasADatabase() {}
}
