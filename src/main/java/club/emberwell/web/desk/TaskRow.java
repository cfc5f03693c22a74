package club.emberwell.web.desk;

import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.home.Task;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One thing that waits, on a line.
 *
 * @param what which kind of thing, in words
 * @param why what is to be said beside it, or empty
 */
record TaskRow(String href, String what, String title, String why, String age) {
  static List<TaskRow> of(List<Task> tasks, String by) {
    return tasks.stream().map(task -> of(task, by)).toList();
  }

  private static TaskRow of(Task task, String by) {
    String rule = Coded.of(RuleCode.class, task.title()).map(RuleCode::label).orElse(task.title());
    return new TaskRow(Turn.path(task, by), what(task), rule, why(task), task.age());
  }

  private static String what(Task task) {
    String label = task.kind().label(task.count());
    return switch (task.kind()) {
      case FLAG -> label + " " + entry(task).toLowerCase(Locale.ROOT);
      case ENTRY -> entry(task) + " " + label;
      case REQUEST, PROPOSAL, REMOVAL, NOTES, WORD -> label;
    };
  }

  private static String entry(Task task) {
    return Coded.of(EntryKind.class, task.about().of()).map(EntryKind::label).orElseThrow();
  }

  private static String why(Task task) {
    String by = task.who() == null ? "" : "by " + task.who();
    return switch (task.kind()) {
      case FLAG -> by + ": " + reasons(task);
      case NOTES -> (task.count() == 1 ? "1 entry " : task.count() + " entries ") + by;
      case REQUEST -> task.count() == 1 ? "" : "and " + (task.count() - 1) + " more";
      case WORD ->
          task.about().of() + (task.count() == 1 ? ", once" : ", " + task.count() + " times");
      case ENTRY, PROPOSAL, REMOVAL -> by;
    };
  }

  private static String reasons(Task task) {
    return task.about().reasons().stream().map(FlagReason::label).collect(Collectors.joining(", "));
  }
}
