package club.emberwell.web.data;

import java.util.List;

/** The first lines with which somebody opens the table; a test runs them as they stand. */
final class FirstLines {
  private FirstLines() {}

  /**
   * @param table address of the table
   */
  static List<String> r(String table) {
    return List.of(
        "trials <- read.csv(\"" + table + "\", na.strings = \"\")",
        "table(trials$material, trials$effect)",
        "aggregate(speed ~ material + process, trials[trials$effect == \"right\", ], median)");
  }

  static List<String> python(String table) {
    return List.of(
        "import pandas",
        "trials = pandas.read_csv(\"" + table + "\")",
        "print(trials[trials.effect == \"right\"].groupby([\"material\", \"process\"]).speed.median())");
  }
}
