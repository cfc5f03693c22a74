package club.emberwell.web.frame;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.MediaType;

/**
 * Every page says in which letters it is written: the framework leaves it out where a template
 * stands in an answer with a status or headers of its own.
 */
@ApplicationScoped
class PageCharset {
  /** Any place before the routes will do: it acts when an answer is about to leave. */
  private static final int PLACE = 900;

  void register(@Observes Filters filters) {
    filters.register(PageCharset::watch, PLACE);
  }

  private static void watch(RoutingContext request) {
    request.addHeadersEndHandler(
        end -> {
          MultiMap headers = request.response().headers();
          if (MediaType.TEXT_HTML.equals(headers.get(HttpHeaders.CONTENT_TYPE))) {
            headers.set(HttpHeaders.CONTENT_TYPE, MediaType.TEXT_HTML + ";charset=UTF-8");
          }
        });
    request.next();
  }
}
