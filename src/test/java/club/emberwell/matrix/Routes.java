package club.emberwell.matrix;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Every address the program answers, from the annotations of its resources. */
final class Routes {
  private Routes() {}

  /** One method of one address, parameters in braces. */
  record Route(String method, String path) implements Comparable<Route> {
    boolean api() {
      return path.startsWith("/api/");
    }

    @Override
    public int compareTo(Route other) {
      return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
      return path + ";" + method;
    }
  }

  /** Test classes are left out, and with them the pages that exist in tests only. */
  static Set<Route> all() {
    Set<Route> routes = new TreeSet<>();
    // only the program's own classes are read; looking for others warns about each
    ArchConfiguration.withThreadLocalScope(
        quiet -> {
          quiet.setResolveMissingDependenciesFromClassPath(false);
          collect(routes);
        });
    return routes;
  }

  private static void collect(Set<Route> routes) {
    new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("club.emberwell")
            .stream()
            .filter(type -> type.isAnnotatedWith(Path.class))
            .map(JavaClass::reflect)
            .flatMap(Routes::of)
            .forEach(routes::add);
  }

  private static Stream<Route> of(Class<?> resource) {
    String base = resource.getAnnotation(Path.class).value();
    return Stream.<Class<?>>iterate(resource, Objects::nonNull, Class::getSuperclass)
        .flatMap(type -> Stream.of(type.getDeclaredMethods()))
        .flatMap(
            method -> verb(method).map(verb -> new Route(verb, joined(base, method))).stream());
  }

  private static Optional<String> verb(Method method) {
    return Stream.of(method.getAnnotations())
        .map(Annotation::annotationType)
        .filter(type -> type.isAnnotationPresent(HttpMethod.class))
        .map(type -> type.getAnnotation(HttpMethod.class).value())
        .findFirst();
  }

  private static String joined(String base, Method method) {
    Path own = method.getAnnotation(Path.class);
    String path = "/" + base + (own == null ? "" : "/" + own.value());
    String plain = path.replaceAll("\\{\\s*(\\w+)\\s*:[^/]*\\}", "{$1}").replaceAll("/+", "/");
    return plain.length() > 1 && plain.endsWith("/")
        ? plain.substring(0, plain.length() - 1)
        : plain;
  }
}
