package club.emberwell.desk.home;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.listing.Cursor;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Everything that waits for a moderator, one after the other, whatever it is. */
@ApplicationScoped
public class Tasks {
  /** The order in which the oldest stand first. */
  public static final String OLDEST = "oldest";

  /** That in which the worst do. */
  private static final String WORST = "worst";

  private final TaskRepository tasks;

  Tasks(TaskRepository tasks) {
    this.tasks = tasks;
  }

  /** One of the two orders; any other word means the worst first. */
  public static String order(String word) {
    return OLDEST.equals(word) ? OLDEST : WORST;
  }

  /** The first of them, the worst or the oldest: one statement. */
  @Transactional
  public List<Task> first(Actor actor, String order) {
    return read(actor, order, Part.FIRST, DeskLimits.TASKS).rows();
  }

  /**
   * The one after a place: one statement.
   *
   * @param place as {@link #place} says it; null = the first one
   */
  @Transactional
  public Optional<Task> next(Actor actor, String order, String place) {
    return read(actor, order, Part.after(place, null), 1).rows().stream().findFirst();
  }

  /** Where a task stands in that order, so that one can go on behind it. */
  public static String place(Task task, String order) {
    boolean oldest = OLDEST.equals(order);
    return Cursor.of(order(order), task.place(oldest)).text();
  }

  private Slice<Task> read(Actor actor, String order, Part part, int size) {
    DeskAccess.moderates(actor);
    boolean oldest = OLDEST.equals(order);
    List<FlagReason> reasons =
        Stream.of(FlagReason.values())
            .filter(reason -> actor.role().atLeast(reason.owner()))
            .toList();
    return Slice.read(
        part,
        ListOrder.oldestFirst(order(order), size),
        place -> tasks.of(actor.memberId(), reasons, oldest, place),
        task -> task.place(oldest));
  }
}
