package club.emberwell.talk;

import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Stands in where nothing sends mail. */
@DefaultBean
@ApplicationScoped
class NoWatchMail implements WatchMail {
  @Override
  public boolean enabled() {
    return false;
  }

  @Override
  public void queue(UUID member, String subject, String text) {
    throw new IllegalStateException("this server sends no mail");
  }
}
