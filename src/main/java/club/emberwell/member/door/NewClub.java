package club.emberwell.member.door;

import jakarta.enterprise.context.ApplicationScoped;

/**
 * Whether this club has nobody yet, known without asking the database: pages lead to the first
 * owner until somebody is here.
 */
@ApplicationScoped
public class NewClub {
  private volatile boolean empty;

  public boolean isEmpty() {
    return empty;
  }

  void begins() {
    empty = true;
  }

  /** Somebody is here, as far as this node can tell. */
  public void entered() {
    empty = false;
  }
}
