package club.emberwell.access;

import club.emberwell.access.problem.BareAnswers;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;

/**
 * Turns back addresses nobody can mean: escapes that are none, and the character NUL. The framework
 * would do a part of it with an empty answer, were it not told by {@code
 * vertx.disableURIValidation} to leave it to us.
 */
@ApplicationScoped
class WellFormed {
  /** Behind the headers of every answer, before anything reads the address. */
  private static final int EARLY = 950;

  private final BareAnswers answers;

  WellFormed(BareAnswers answers) {
    this.answers = answers;
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, EARLY);
  }

  private void check(RoutingContext routing) {
    if (readable(routing.request().uri())) {
      routing.next();
    } else {
      answers.answer(
          routing,
          Problems.of(
              ProblemKind.INVALID_REQUEST, "The address has characters that cannot be read."));
    }
  }

  private static boolean readable(String address) {
    try {
      new URI(address);
      return URLDecoder.decode(address, StandardCharsets.UTF_8).indexOf('\0') < 0;
    } catch (URISyntaxException | IllegalArgumentException e) {
      return false;
    }
  }
}
