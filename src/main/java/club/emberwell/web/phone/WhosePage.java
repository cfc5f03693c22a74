package club.emberwell.web.phone;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Says with each page whose it is, so that a phone shows what it keeps to nobody else; the service
 * worker reads it.
 */
class WhosePage {
  static final String HEADER = "Emberwell-Member";
  static final String NOBODY = "-";

  private final CurrentActor current;

  WhosePage(CurrentActor current) {
    this.current = current;
  }

  @ServerResponseFilter
  void say(ContainerResponseContext answer) {
    if (isPage(answer)) {
      Actor reader = current.get();
      String whose = reader.signedIn() ? reader.memberId().toString() : NOBODY;
      answer.getHeaders().putSingle(HEADER, whose);
    }
  }

  /** A page that a method answers by a Response has no type yet. */
  private static boolean isPage(ContainerResponseContext answer) {
    MediaType type = answer.getMediaType();
    return type == null
        ? answer.getEntity() instanceof TemplateInstance
        : MediaType.TEXT_HTML_TYPE.isCompatible(type);
  }
}
