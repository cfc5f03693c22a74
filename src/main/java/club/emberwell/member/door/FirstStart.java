package club.emberwell.member.door;

import club.emberwell.member.club.ClubOptions;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.temporal.ChronoUnit;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** What a new club needs once: how its doors stand, and an owner. */
@ApplicationScoped
class FirstStart {
  private static final Logger LOG = Logger.getLogger(FirstStart.class);
  private static final int BEFORE_OTHERS = 100;
  private static final String NONE = "none";

  private final ClubOptions club;
  private final FirstOwner owner;
  private final NewClub nobody;
  private final DoorDefaults defaults;
  private final String publicUrl;
  private final String scenario;

  FirstStart(
      ClubOptions club,
      FirstOwner owner,
      NewClub nobody,
      DoorDefaults defaults,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl,
      @ConfigProperty(name = "emberwell.scenario") String scenario) {
    this.club = club;
    this.owner = owner;
    this.nobody = nobody;
    this.defaults = defaults;
    this.publicUrl = publicUrl;
    this.scenario = scenario;
  }

  void begin(@Observes @Priority(BEFORE_OTHERS) StartupEvent started) {
    club.begin(defaults.door(), defaults.readingPublic());
    // a scenario brings its own owner
    if (scenario.equals(NONE)) {
      if (owner.nobodyYet()) {
        nobody.begins();
      }
      owner
          .issue()
          .ifPresent(
              issued ->
                  LOG.infof(
                      "This club has no owner yet: open %s/first-owner and enter the code %s. It"
                          + " works once, until %s; a start after that makes a new one.",
                      publicUrl, issued.code(), issued.until().truncatedTo(ChronoUnit.MINUTES)));
    }
  }
}
