package club.emberwell.web.phone;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
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
    MediaType type = answer.getMediaType();
    if (type != null && MediaType.TEXT_HTML_TYPE.isCompatible(type)) {
      Actor reader = current.get();
      String whose = reader.signedIn() ? reader.memberId().toString() : NOBODY;
      answer.getHeaders().putSingle(HEADER, whose);
    }
  }
}
