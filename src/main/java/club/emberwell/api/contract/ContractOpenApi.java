package club.emberwell.api.contract;

import club.emberwell.access.ApiPaths;
import club.emberwell.member.Role;
import club.emberwell.member.Scope;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.info.Info;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;
import org.jboss.jandex.IndexView;

/**
 * The last to work on the API's description: leaves what programs use, and says of each operation
 * what follows from its method's traits ({@link Route}).
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD, priority = ContractOpenApi.LAST)
public class ContractOpenApi implements OASFilter {
  /** After those that describe the catalogues. */
  static final int LAST = -1000;

  private static final String TOKEN = "token";
  private static final String IDEMPOTENCY_KEY = "Idempotency-Key";

  private final Map<String, Route> routes;
  private final Shapes shapes;

  public ContractOpenApi(IndexView index) {
    routes = Route.all(index);
    shapes = new Shapes(index);
  }

  @Override
  public void filterOpenAPI(OpenAPI api) {
    if (api.getPaths() == null || api.getComponents() == null) {
      return;
    }
    List.copyOf(api.getPaths().getPathItems().keySet()).stream()
        .filter(path -> !path.startsWith(ApiPaths.BASE + "/"))
        .forEach(api.getPaths()::removePathItem);
    Schemas schemas = new Schemas(api.getComponents());
    SchemaCare care = new SchemaCare(api, schemas, shapes);
    care.mend();
    ProblemAnswers.define(api.getComponents());
    ProblemAnswers problems = new ProblemAnswers(schemas);
    Examples examples = new Examples();
    api.getPaths()
        .getPathItems()
        .forEach(
            (path, item) ->
                item.getOperations()
                    .forEach(
                        (verb, operation) -> {
                          Route route = routes.get(verb + " " + path);
                          if (route != null) {
                            KindWords.mend(path, operation);
                            describe(operation, route);
                            problems.add(operation, route);
                            ClosedWords.mend(path, operation);
                            examples.add(operation);
                            AddressWords.mend(operation);
                          }
                        }));
    care.splitRepeats();
    care.tidy();
    ClosedWords.mend(api.getComponents().getSchemas());
    introduce(api);
  }

  private static void describe(Operation operation, Route route) {
    secure(operation, route);
    if (route.keyed()) {
      operation.addParameter(
          header(IDEMPOTENCY_KEY, true, "Made by the client, new for each thing that is posted.")
              .schema(Models.text().minLength(1)));
    }
    if (route.conditional()) {
      operation.addParameter(
          header(HttpHeaders.IF_MATCH, route.conditionRequired(), "The ETag of what was read.")
              .schema(Models.text()));
    }
    if (route.tagged() && route.verb().equals("GET")) {
      operation.addParameter(
          header(HttpHeaders.IF_NONE_MATCH, false, "The ETag of a kept answer.")
              .schema(Models.text()));
      operation
          .getResponses()
          .addAPIResponse(
              "304",
              OASFactory.createAPIResponse()
                  .description("Not changed since.")
                  .addHeader(
                      HttpHeaders.ETAG, Models.header(Models.text(), "The version that is kept.")));
    }
    if (route.answersNothing()) {
      List.copyOf(operation.getResponses().getAPIResponses().keySet()).stream()
          .filter(status -> status.startsWith("2"))
          .forEach(operation.getResponses()::removeAPIResponse);
      operation.getResponses().addAPIResponse("204", OASFactory.createAPIResponse());
    }
    Map.copyOf(operation.getResponses().getAPIResponses())
        .forEach((status, answer) -> answered(status, answer, route));
  }

  private static void answered(String status, APIResponse answer, Route route) {
    boolean done = status.startsWith("2");
    if (done && answer.getContent() != null) {
      answer.getContent().getMediaTypes().forEach(ContractOpenApi::file);
    }
    if (done && route.tagged()) {
      answer.addHeader(
          HttpHeaders.ETAG, Models.header(Models.text(), "The version that was answered."));
    }
    if (done && route.pages()) {
      answer.addHeader(
          HttpHeaders.LINK,
          Models.header(Models.text(), "Where the list goes on, as rel=next.").required(false));
    }
    if (status.equals("201")) {
      answer.addHeader(
          HttpHeaders.LOCATION,
          Models.header(Models.text().format("uri-reference"), "Where it is from now on."));
    }
    if (answer.getDescription() == null || answer.getDescription().isBlank()) {
      answer.setDescription(status.equals("204") ? "Done." : "OK");
    }
  }

  /** What is no JSON. */
  private static void file(String format, MediaType media) {
    if (!format.equals("application/json")) {
      Schema text = Models.text();
      media.setSchema(
          format.startsWith("text/") || format.endsWith("xml") || format.endsWith("jsonl")
              ? text
              : text.format("binary"));
    }
  }

  private static void secure(Operation operation, Route route) {
    List<String> scopes = Scope.codes(route.scopes());
    operation.setSecurity(new ArrayList<>());
    route
        .role()
        .ifPresent(
            role -> {
              if (role == Role.READER) {
                operation.addSecurityRequirement(OASFactory.createSecurityRequirement());
              }
              operation.addSecurityRequirement(
                  OASFactory.createSecurityRequirement().addScheme(TOKEN, scopes));
              operation.addExtension("x-role", role.code());
            });
  }

  private static Parameter header(String name, boolean required, String description) {
    return OASFactory.createParameter()
        .in(Parameter.In.HEADER)
        .name(name)
        .required(required)
        .description(description);
  }

  private static void introduce(OpenAPI api) {
    Info info =
        OASFactory.createInfo()
            .title("Emberwell")
            .version("1")
            .summary("Shared settings of people who engrave with lasers.")
            .description(ABOUT)
            .license(
                OASFactory.createLicense().name("Apache License 2.0").identifier("Apache-2.0"));
    api.setInfo(info);
    api.setServers(
        List.of(OASFactory.createServer().url("/").description("The club that answers this.")));
    api.getComponents()
        .addSecurityScheme(
            TOKEN,
            OASFactory.createSecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme("bearer")
                .description(TOKENS));
    Set<String> used =
        api.getPaths().getPathItems().values().stream()
            .flatMap(item -> item.getOperations().values().stream())
            .filter(operation -> operation.getTags() != null)
            .flatMap(operation -> operation.getTags().stream())
            .collect(Collectors.toSet());
    api.setTags(
        Stream.of(ApiTag.values())
            .filter(tag -> used.contains(tag.label()))
            .map(tag -> OASFactory.createTag().name(tag.label()).description(tag.about()))
            .toList());
  }

  private static final String ABOUT =
      """
      Everything a person can do in this club, for programs.

      The licence above is that of the program. What members wrote is theirs: each report names the \
      licence its author chose.

      Where the club reads in public, what needs only the role `reader` is answered to anybody; else \
      a token with the scope `read` is needed. Errors are `application/problem+json`, each with a \
      `type` of its own that leads to an explanation. Fields that are not named here are refused in \
      requests, and `null` there is as if the field were left out; answers may gain fields.\
      """;

  private static final String TOKENS =
      """
      `Authorization: Bearer`, with a token from `POST /api/v1/tokens` or one's account page. Each \
      operation names the scopes it needs: `read` for what only reads, `write` for everything else, \
      `moderate` besides for what only moderators and owners may. The session cookie of the pages \
      counts for nothing here.\
      """;
}
