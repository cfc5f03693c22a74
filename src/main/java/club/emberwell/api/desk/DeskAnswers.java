package club.emberwell.api.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Problem;
import club.emberwell.access.Problems;
import club.emberwell.api.writes.KeyedWrites;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** How all resources of the desk write: once per Idempotency-Key, as whoever asks. */
@RequestScoped
class DeskAnswers {
  private static final int UNPROCESSABLE = 422;

  private final CurrentActor current;
  private final KeyedWrites writes;

  DeskAnswers(CurrentActor current, KeyedWrites writes) {
    this.current = current;
    this.writes = writes;
  }

  Actor actor() {
    return current.get();
  }

  /** Does a write and answers its result, or what it answered before. */
  Response once(Object sent, Function<Actor, Object> write) {
    return writes.once(sent, () -> Response.ok(write.apply(actor())).build());
  }

  /** The same with nothing to tell. */
  Response done(Object sent, java.util.function.Consumer<Actor> write) {
    return once(
        sent,
        actor -> {
          write.accept(actor);
          return Map.of("done", true);
        });
  }

  /** A field that must be there. */
  static <T> T needed(String pointer, T given) {
    if (given == null || given instanceof String text && text.isBlank()) {
      Problem.Fault fault = new Problem.Fault(pointer, "This field is needed.", List.of());
      throw Problems.of(UNPROCESSABLE, "This field is needed.", List.of(fault)).exception();
    }
    return given;
  }
}
