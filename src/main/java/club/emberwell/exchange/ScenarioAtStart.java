package club.emberwell.exchange;

import club.emberwell.exchange.open.PackageMaker;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Starts the loading of a scenario beside the server, which answers meanwhile. */
@ApplicationScoped
class ScenarioAtStart {
  private static final Logger LOG = Logger.getLogger(ScenarioAtStart.class);
  private static final String NONE = "none";

  void begin(
      @Observes StartupEvent started,
      ScenarioLoader loader,
      PackageMaker data,
      @ConfigProperty(name = "emberwell.scenario") String folder) {
    if (folder.equals(NONE)) {
      return;
    }
    Thread thread =
        new Thread(
            () -> {
              try {
                loader.load(folder);
                data.ask();
              } catch (RuntimeException e) {
                LOG.error("scenario: loading broke off; the next start goes on with it", e);
              }
            },
            "scenario");
    thread.setDaemon(true);
    thread.start();
  }
}
