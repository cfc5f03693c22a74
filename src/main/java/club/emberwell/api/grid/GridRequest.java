package club.emberwell.api.grid;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.grid.result.WrittenResults;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A grid as sent.
 *
 * @param id made by the client, or left out
 * @param results how its tests came out, or left out
 */
record GridRequest(UUID id, @JsonUnwrapped WrittenGrid written, WrittenResults results) {
  /** Refuses results where nobody would read them. */
  void withoutResults() {
    if (results != null) {
      throw Problems.at(
              ProblemKind.INVALID_REQUEST,
              "/results",
              "Results go to the grid's own address: /results.")
          .exception();
    }
  }
}
