package club.emberwell.web.room;

import club.emberwell.access.CurrentActor;
import club.emberwell.room.Rooms;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;

/** What is to be checked in the reader's rooms, for the pages that remind of it. */
@Named("dueChecks")
@RequestScoped
public class DueChecks {
  private final Rooms rooms;
  private final CurrentActor current;
  private List<Line> lines;

  DueChecks(Rooms rooms, CurrentActor current) {
    this.rooms = rooms;
    this.current = current;
  }

  /**
   * A check that is due.
   *
   * @param path of its room
   */
  public record Line(String path, String room, CheckLine check) {}

  /** The longest due first; one statement for each request. */
  public List<Line> getLines() {
    if (lines == null) {
      lines =
          rooms.due(current.get()).stream()
              .map(due -> new Line("/rooms/" + due.room(), due.name(), CheckLine.of(due.state())))
              .toList();
    }
    return lines;
  }
}
