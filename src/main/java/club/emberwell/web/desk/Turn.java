package club.emberwell.web.desk;

import club.emberwell.desk.home.Task;
import club.emberwell.desk.home.Tasks;
import club.emberwell.web.frame.SentForm;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * Where a moderator is among what waits, so that each decision leads to the next thing.
 *
 * @param by which order they go in
 * @param place of what is before them; null where they came from elsewhere
 */
public record Turn(String by, String place) {
  private static final Pattern PLACE = Pattern.compile("[A-Za-z0-9_-]{1,400}");

  public Turn {
    by = Tasks.order(by);
    place = place == null || !PLACE.matcher(place).matches() ? null : place;
  }

  /** What a form brought along, by the tag {@code turnFields}. */
  public static Turn of(SentForm sent) {
    return new Turn(sent.text("by"), sent.text("place"));
  }

  /** Where a task is decided in its turn. */
  static String path(Task task, String by) {
    return task.path() + "?by=" + by + "&place=" + Tasks.place(task, by);
  }

  /** Whether they go through what waits. */
  public boolean isOn() {
    return place != null;
  }

  /** Where what waits after this is found. */
  public String getNext() {
    return "/desk/next?by=" + by + (place == null ? "" : "&after=" + place);
  }

  /** That after a decision. */
  public String done() {
    return getNext() + "&done=yes";
  }

  /** That after a decision that is undone in one. */
  String done(UUID run) {
    return getNext() + "&done=" + run;
  }

  /** That after a decision where they go through what waits, else this path. */
  public String or(String path) {
    return isOn() ? done() : path;
  }

  /**
   * A page of several things that are decided one by one, where some of them are left.
   *
   * @param done what was decided, as that page says it
   */
  public String stay(String path, String done) {
    return path + "?done=" + done + "&by=" + by + (place == null ? "" : "&place=" + place);
  }
}
