package club.emberwell.exchange;

import club.emberwell.entry.Origin;
import java.util.UUID;

/** How a scenario comes: as a club of its own, or as an example among real people. */
public interface ScenarioGuise {
  /** As a club of its own: its people sign in and hold their offices. */
  ScenarioGuise OWN_CLUB =
      new ScenarioGuise() {
        @Override
        public boolean ownClub() {
          return true;
        }

        @Override
        public String line(String line) {
          return line;
        }

        @Override
        public Origin origin() {
          return Origin.HERE;
        }

        @Override
        public void joined(UUID member) {}

        @Override
        public void stored(int done, int total) {}
      };

  /** Whether the club itself is the scenario's: its name, its doors, who holds which office. */
  boolean ownClub();

  /** A line of a file as it is to be read: its names and ids may be others. */
  String line(String line);

  /** Where its entries say they were made. */
  Origin origin();

  /** Somebody of the scenario gets an account, in the present transaction. */
  void joined(UUID member);

  /**
   * So many lines are stored; asked now and then.
   *
   * @throws RuntimeException to break the loading off
   */
  void stored(int done, int total);
}
