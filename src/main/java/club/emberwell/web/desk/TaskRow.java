package club.emberwell.web.desk;

import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.home.Task;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import java.util.List;
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
    return switch (task.kind()) {
      case "flag" -> "Flagged " + entry(task).toLowerCase(java.util.Locale.ROOT);
      case "entry" -> entry(task) + " to approve";
      case "request" -> task.count() == 1 ? "Request to join" : "Requests to join";
      case "proposal" -> "Proposed caution text";
      case "removal" -> "Caution to remove";
      case "notes" -> "Noticed by a rule";
      default -> "New word";
    };
  }

  private static String entry(Task task) {
    return Coded.of(EntryKind.class, task.about().split(" ")[0])
        .map(EntryKind::label)
        .orElseThrow();
  }

  private static String why(Task task) {
    String by = task.who() == null ? "" : "by " + task.who();
    return switch (task.kind()) {
      case "flag" -> by + ": " + reasons(task);
      case "notes" -> (task.count() == 1 ? "1 entry " : task.count() + " entries ") + by;
      case "request" -> task.count() == 1 ? "" : "and " + (task.count() - 1) + " more";
      case "word" -> task.about() + (task.count() == 1 ? ", once" : ", " + task.count() + " times");
      default -> by;
    };
  }

  private static String reasons(Task task) {
    return List.of(task.about().split(" ")).stream()
        .flatMap(code -> Coded.of(FlagReason.class, code).stream())
        .map(FlagReason::label)
        .collect(Collectors.joining(", "));
  }
}
