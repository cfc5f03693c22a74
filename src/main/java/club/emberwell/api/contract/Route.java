package club.emberwell.api.contract;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.ReadsOnly;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.member.Scope;
import club.emberwell.remark.Coded;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.UriInfo;
import java.lang.annotation.Annotation;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.AnnotationTarget;
import org.jboss.jandex.AnnotationValue;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;
import org.jboss.jandex.Type;

/**
 * A method that serves an address, and what its annotations tell of it.
 *
 * @param verb in upper case
 * @param path with its parameters in braces, without their patterns
 */
record Route(String verb, String path, MethodInfo method) {
  private static final Set<String> VERBS = Set.of("GET", "POST", "PUT", "PATCH", "DELETE");
  private static final String JAX_RS = "jakarta.ws.rs.";

  /** All of them, by verb and path, e.g. {@code GET /api/v1/club}. */
  static Map<String, Route> all(IndexView index) {
    Map<String, Route> all = new HashMap<>();
    for (AnnotationInstance path : index.getAnnotations(name(Path.class))) {
      if (path.target().kind() == AnnotationTarget.Kind.CLASS) {
        lineage(path.target().asClass(), index)
            .flatMap(type -> type.methods().stream())
            .flatMap(method -> of(path.value().asString(), method).stream())
            .forEach(route -> all.putIfAbsent(route.key(), route));
      }
    }
    return all;
  }

  /** A resource and the classes above it that it has methods from. */
  private static Stream<ClassInfo> lineage(ClassInfo type, IndexView index) {
    return Stream.iterate(
        type,
        Objects::nonNull,
        below -> below.superName() == null ? null : index.getClassByName(below.superName()));
  }

  private static Optional<Route> of(String base, MethodInfo method) {
    AnnotationInstance below = method.annotation(name(Path.class));
    String path = below == null ? base : base + "/" + below.value().asString();
    String plain = ("/" + path).replaceAll("/+", "/").replaceAll("\\{\\s*(\\w+)[^}]*}", "{$1}");
    return VERBS.stream()
        .filter(verb -> method.hasAnnotation(DotName.createSimple(JAX_RS + verb)))
        .findFirst()
        .map(verb -> new Route(verb, plain, method));
  }

  String key() {
    return verb + " " + path;
  }

  /** The lowest role that may; empty where anybody may. */
  Optional<Role> role() {
    return of(RolesAllowed.class)
        .map(roles -> roles.value().asStringArray()[0])
        .flatMap(code -> Coded.of(Role.class, code));
  }

  boolean reads() {
    return verb.equals("GET") || has(ReadsOnly.class);
  }

  /** What a token needs. */
  Set<Scope> scopes() {
    Set<Scope> scopes = EnumSet.of(reads() ? Scope.READ : Scope.WRITE);
    if (role().filter(role -> role.atLeast(Role.MODERATOR)).isPresent()) {
      scopes.add(Scope.MODERATE);
    }
    return scopes;
  }

  boolean keyed() {
    return has(Keyed.class);
  }

  boolean conditional() {
    return has(IfMatch.class);
  }

  boolean conditionRequired() {
    return of(IfMatch.class)
        .filter(c -> c.value("required") == null || c.value("required").asBoolean())
        .isPresent();
  }

  boolean tagged() {
    return has(WithEtag.class);
  }

  boolean atAnyPace() {
    return has(AtAnyPace.class);
  }

  /** Whether it is hidden where nobody signs in with a password. */
  boolean localSignIn() {
    return has(LocalSignIn.class);
  }

  boolean onOne() {
    return path.contains("{");
  }

  boolean answersNothing() {
    return method.returnType().kind() == Type.Kind.VOID;
  }

  /** Whether its answer is a list that is read by cursor. */
  boolean pages() {
    return method.parameterTypes().stream().anyMatch(t -> t.name().equals(name(ListQuery.class)));
  }

  /** Whether it reads a search from its address. */
  boolean searches() {
    return method.parameterTypes().stream().anyMatch(t -> t.name().equals(name(UriInfo.class)));
  }

  /** The problems it names itself. */
  Set<ProblemKind> fails() {
    Stream<AnnotationInstance> own = Stream.ofNullable(method.annotation(name(Fails.class)));
    ClassInfo resource = method.declaringClass();
    Stream<AnnotationInstance> shared =
        onOne() ? Stream.ofNullable(resource.declaredAnnotation(name(Fails.class))) : Stream.of();
    return Stream.concat(own, shared)
        .map(AnnotationInstance::value)
        .map(AnnotationValue::asEnumArray)
        .flatMap(Stream::of)
        .map(ProblemKind::valueOf)
        .collect(Collectors.toSet());
  }

  private boolean has(Class<? extends Annotation> type) {
    return of(type).isPresent();
  }

  /** On the method, or else on its class where the method says nothing about it. */
  private Optional<AnnotationInstance> of(Class<? extends Annotation> type) {
    AnnotationInstance own = method.annotation(name(type));
    if (own != null) {
      return Optional.of(own);
    }
    boolean open =
        type == RolesAllowed.class
            && List.of("PermitAll", "DenyAll").stream().anyMatch(this::guarded);
    return open
        ? Optional.empty()
        : Optional.ofNullable(method.declaringClass().declaredAnnotation(name(type)));
  }

  private boolean guarded(String simple) {
    return method.hasAnnotation(DotName.createSimple("jakarta.annotation.security." + simple));
  }

  private static DotName name(Class<?> type) {
    return DotName.createSimple(type.getName());
  }
}
