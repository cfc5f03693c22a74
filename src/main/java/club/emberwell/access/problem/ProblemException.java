package club.emberwell.access.problem;

/** Ends a request with a problem. */
public class ProblemException extends RuntimeException {
  private final transient Problem problem;

  ProblemException(Problem problem) {
    super(problem.detail(), null, false, false);
    this.problem = problem;
  }

  public Problem problem() {
    return problem;
  }
}
