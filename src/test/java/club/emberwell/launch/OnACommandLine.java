package club.emberwell.launch;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * The verbs are asked as in a process of their own: the application of another test may still run
 * in this one, and its settings stand in the system properties, which the program reads.
 */
final class OnACommandLine implements BeforeAllCallback, AfterAllCallback {
  private final Map<String, String> setAside = new HashMap<>();

  @Override
  public void beforeAll(ExtensionContext context) {
    for (Setting setting : Settings.known().all()) {
      if (System.getProperty(setting.name()) != null) {
        setAside.put(setting.name(), System.clearProperty(setting.name()));
      }
    }
  }

  @Override
  public void afterAll(ExtensionContext context) {
    setAside.forEach(System::setProperty);
    setAside.clear();
  }
}
