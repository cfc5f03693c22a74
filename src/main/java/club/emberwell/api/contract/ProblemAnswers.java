package club.emberwell.api.contract;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.member.Role;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.parameters.RequestBody;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Which problems come with an operation, from its traits; and the answers they make, one for each
 * status.
 */
final class ProblemAnswers {
  /** Names the kinds of an operation, for the page about it. */
  static final String KINDS = "x-problems";

  private static final String JSON = "application/json";
  private static final Set<Integer> WAITING = Set.of(429, 503);
  private static final int UNAUTHORIZED = 401;
  private static final int FORBIDDEN = 403;
  private static final int PRECONDITION_FAILED = 412;

  private final Schemas schemas;

  ProblemAnswers(Schemas schemas) {
    this.schemas = schemas;
  }

  /** Adds what every operation refers to. */
  static void define(Components components) {
    components.addSchema("Problem", problem());
    components.addSchema("Fault", fault());
    components.addSchema("Prohibited", prohibited());
    Map<Integer, List<ProblemKind>> byStatus =
        Stream.of(ProblemKind.values())
            // neither comes from an operation: of a page's form, and where there is no operation
            .filter(k -> k != ProblemKind.FOREIGN_FORM && k != ProblemKind.METHOD_NOT_ALLOWED)
            .collect(Collectors.groupingBy(ProblemKind::status, TreeMap::new, Collectors.toList()));
    byStatus.forEach(
        (status, kinds) -> components.addResponse(name(status), answer(status, kinds)));
  }

  /** Names the problems of an operation. */
  void add(Operation operation, Route route) {
    Set<ProblemKind> kinds = kinds(operation, route);
    kinds.stream()
        .map(ProblemKind::status)
        .distinct()
        .forEach(
            status -> operation.getResponses().addAPIResponse(String.valueOf(status), ref(status)));
    operation.addExtension(KINDS, kinds.stream().map(ProblemKind::code).toList());
  }

  private Set<ProblemKind> kinds(Operation operation, Route route) {
    Set<ProblemKind> kinds =
        EnumSet.of(
            ProblemKind.TOKEN_UNKNOWN,
            ProblemKind.SCOPE_MISSING,
            ProblemKind.FORMAT_NOT_AVAILABLE,
            ProblemKind.OWN_FAULT,
            ProblemKind.UNAVAILABLE);
    route.role().ifPresent(role -> asked(role, kinds));
    if (route.onOne()) {
      kinds.add(ProblemKind.NOT_FOUND);
    }
    if (route.searches()) {
      kinds.addAll(
          EnumSet.of(
              ProblemKind.INVALID_FIELDS,
              ProblemKind.AMBIGUOUS_QUANTITY,
              ProblemKind.INDEX_NOT_READY));
    }
    if (asksInAddress(operation)) {
      kinds.add(ProblemKind.INVALID_PARAMETER);
    }
    if (route.localSignIn()) {
      kinds.add(ProblemKind.NOT_FOUND);
    }
    body(operation.getRequestBody(), kinds);
    if (!route.reads()) {
      writes(route, kinds);
    }
    kinds.addAll(route.fails());
    return kinds;
  }

  private static boolean asksInAddress(Operation operation) {
    return operation.getParameters() != null
        && operation.getParameters().stream().anyMatch(p -> p.getIn() == Parameter.In.QUERY);
  }

  private static void asked(Role role, Set<ProblemKind> kinds) {
    kinds.add(ProblemKind.SIGN_IN_NEEDED);
    if (role.atLeast(Role.MEMBER)) {
      kinds.add(ProblemKind.ROLE_MISSING);
    }
  }

  private void body(RequestBody body, Set<ProblemKind> kinds) {
    if (body == null || body.getContent() == null) {
      return;
    }
    kinds.add(ProblemKind.TOO_LARGE);
    kinds.add(ProblemKind.TOO_SLOW);
    kinds.add(ProblemKind.FORMAT_NOT_ACCEPTED);
    if (!body.getContent().hasMediaType(JSON)) {
      kinds.add(ProblemKind.INVALID_REQUEST);
      kinds.add(ProblemKind.PICTURE_UNREADABLE);
      return;
    }
    kinds.addAll(
        EnumSet.of(
            ProblemKind.INVALID_JSON,
            ProblemKind.UNKNOWN_FIELD,
            ProblemKind.WRONG_TYPE,
            ProblemKind.INVALID_FIELDS));
    Schema sent = body.getContent().getMediaType(JSON).getSchema();
    if (schemas.reaches(sent, Schemas.SENT_QUANTITY)) {
      kinds.add(ProblemKind.AMBIGUOUS_QUANTITY);
    }
    if (schemas.has(sent, "confirmed")) {
      kinds.add(ProblemKind.UNCONFIRMED);
    }
    if (schemas.has(sent, "password")) {
      kinds.add(ProblemKind.NOT_PROVEN);
      kinds.add(ProblemKind.BUSY);
    }
    if (schemas.has(sent, "material")) {
      kinds.add(ProblemKind.PROHIBITED_WORK);
    }
  }

  private static void writes(Route route, Set<ProblemKind> kinds) {
    kinds.add(ProblemKind.STORAGE_FULL);
    if (route.role().isEmpty()) {
      kinds.add(ProblemKind.TOO_MANY_TRIES);
    } else if (!route.atAnyPace()) {
      kinds.add(ProblemKind.TOO_FAST);
    }
    if (route.onOne() && route.role().isPresent()) {
      kinds.add(ProblemKind.NOT_YOURS);
      kinds.add(ProblemKind.STATE_FORBIDS);
    }
    if (route.keyed()) {
      kinds.addAll(
          EnumSet.of(
              ProblemKind.KEY_MISSING,
              ProblemKind.KEY_INVALID,
              ProblemKind.KEY_RUNNING,
              ProblemKind.KEY_REUSED));
    }
    if (route.conditional()) {
      kinds.add(ProblemKind.CHANGED);
    }
    if (route.conditionRequired()) {
      kinds.add(ProblemKind.CONDITION_MISSING);
    }
  }

  private static String name(int status) {
    return "Problem" + status;
  }

  private static APIResponse ref(int status) {
    return OASFactory.createAPIResponse().ref("#/components/responses/" + name(status));
  }

  private static APIResponse answer(int status, List<ProblemKind> kinds) {
    String said =
        kinds.stream()
            .map(kind -> "`%s`: %s".formatted(kind.code(), kind.meaning()))
            .collect(Collectors.joining("\n- ", "- ", ""));
    APIResponse answer =
        OASFactory.createAPIResponse()
            .description(said)
            .content(
                OASFactory.createContent()
                    .addMediaType(
                        "application/problem+json",
                        OASFactory.createMediaType().schema(Models.reference("Problem"))));
    if (WAITING.contains(status)) {
      answer.addHeader(
          HttpHeaders.RETRY_AFTER,
          Models.header(Models.integer(0), "Seconds to wait before the next try."));
    }
    if (status == PRECONDITION_FAILED) {
      answer.addHeader(
          HttpHeaders.ETAG,
          Models.header(Models.text(), "The present version, where it can be told.")
              .required(false));
    }
    if (status == UNAUTHORIZED || status == FORBIDDEN) {
      answer.addHeader(
          HttpHeaders.WWW_AUTHENTICATE,
          Models.header(
                  Models.text(), "How to prove who asks, or which scope is missing (RFC 6750).")
              .required(status == UNAUTHORIZED));
    }
    return answer;
  }

  private static Schema problem() {
    List<Object> types =
        Stream.of(ProblemKind.values()).<Object>map(ProblemKind::type).collect(Collectors.toList());
    Schema problem =
        Models.object()
            .description("Why a request was not done (RFC 9457).")
            .addProperty(
                "type",
                Models.text()
                    .format("uri-reference")
                    .enumeration(types)
                    .description("The kind of problem, and where it is explained."))
            .addProperty("title", Models.text().description("The kind in a few words."))
            .addProperty("status", Models.integer(400).description("The HTTP status."))
            .addProperty("detail", Models.text().description("One sentence for a person."))
            .addProperty(
                "id", Models.text().description("What to name to the operator; our faults only."))
            .addProperty(
                "errors",
                Models.list(Models.reference("Fault")).description("The fields at fault."))
            .addProperty("prohibited", Models.reference("Prohibited"));
    return problem.required(List.of("type", "title", "status", "detail"));
  }

  private static Schema fault() {
    return Models.object()
        .description("One field or parameter at fault.")
        .addProperty(
            "pointer",
            Models.text()
                .description("JSON pointer (RFC 6901) to what was sent; empty = the whole."))
        .addProperty("detail", Models.text().description("One sentence for a person."))
        .addProperty(
            "readings",
            Models.list(Models.text())
                .description("What the text could mean; each is taken when sent instead."))
        .required(List.of("pointer", "detail"));
  }

  private static Schema prohibited() {
    Schema hazard = Models.object().description("Why a material takes no settings.");
    List<String> parts = new ArrayList<>(List.of("subject", "hazard", "agent", "source"));
    parts.forEach(part -> hazard.addProperty(part, Models.text()));
    return hazard.required(parts);
  }
}
