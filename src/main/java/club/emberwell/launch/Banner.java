package club.emberwell.launch;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Says in the log where the server is and where its data are. */
@ApplicationScoped
class Banner {
  private static final Logger LOG = Logger.getLogger(Banner.class);

  @Inject
  @ConfigProperty(name = "emberwell.public-url")
  String publicUrl;

  @Inject
  @ConfigProperty(name = "emberwell.home")
  String home;

  @Inject
  @ConfigProperty(name = "emberwell.database.kind")
  String kind;

  @Inject
  @ConfigProperty(name = "quarkus.datasource.jdbc.url")
  String database;

  void announce(@Observes StartupEvent start) {
    LOG.infof("Emberwell opens at %s", publicUrl);
    if (PublicUrlFinding.isPlain(publicUrl)) {
      LOG.warnf("%s has no TLS: %s", publicUrl, PublicUrlFinding.PLAIN);
    }
    LOG.infof("Data: %s database %s; home %s", kind, database.replaceAll("\\?.*", ""), home);
  }
}
