package club.emberwell.launch;

import java.util.Collections;
import org.junit.jupiter.api.ClassOrderer;
import org.junit.jupiter.api.ClassOrdererContext;

/**
 * Runs test classes in an order that nobody chose, so that none leans on what another left. Those
 * that share an application stay together, which Quarkus sees to. The order is the same each time;
 * {@code -Dtests.seed=N} takes another, {@code -Dtests.seed=random} one nobody had.
 */
public final class RandomOrder implements ClassOrderer {
  private static final long SEED = seed(System.getProperty("tests.seed", "4711"));

  private static long seed(String named) {
    return named.equals("random") ? System.nanoTime() % 1_000_000 : Long.parseLong(named);
  }

  @Override
  public void orderClasses(ClassOrdererContext context) {
    System.out.println("Test classes run in the order of -Dtests.seed=" + SEED);
    Collections.shuffle(context.getClassDescriptors(), new java.util.Random(SEED));
  }
}
