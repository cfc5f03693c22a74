package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertNotSame;

import java.io.File;
import java.io.IOException;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The first use of a unit decides for all later ones, so it may come from any thread. */
class UnitsOnAnyThreadTest {
  @Test
  void theTableOfUnitsLoadsOnAThreadThatLooksForClassesElsewhere() throws IOException {
    try (URLClassLoader own =
        new URLClassLoader(classPath(), ClassLoader.getPlatformClassLoader())) {
      Class<?> table =
          assertDoesNotThrow(() -> Class.forName("club.emberwell.quantity.UnitTable", true, own));
      assertNotSame(UnitTable.class, table);
    }
  }

  private static URL[] classPath() throws MalformedURLException {
    List<URL> places = new ArrayList<>();
    for (String place : System.getProperty("java.class.path").split(File.pathSeparator)) {
      places.add(new File(place).toURI().toURL());
    }
    return places.toArray(URL[]::new);
  }
}
