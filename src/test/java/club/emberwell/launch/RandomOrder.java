package club.emberwell.launch;

import java.util.Collections;
import org.junit.jupiter.api.ClassOrderer;
import org.junit.jupiter.api.ClassOrdererContext;

/**
 * Runs test classes in another order each time, so that none leans on what another left. Those that
 * share an application stay together, which Quarkus sees to. {@code -Dtests.seed=N} runs an order
 * again.
 */
public final class RandomOrder implements ClassOrderer {
  private static final long SEED = Long.getLong("tests.seed", System.nanoTime() % 1_000_000);

  @Override
  public void orderClasses(ClassOrdererContext context) {
    System.out.println("Test classes run in the order of -Dtests.seed=" + SEED);
    Collections.shuffle(context.getClassDescriptors(), new java.util.Random(SEED));
  }
}
