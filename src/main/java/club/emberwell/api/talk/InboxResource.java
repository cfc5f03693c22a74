package club.emberwell.api.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ItemJson;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.MemberJson;
import club.emberwell.desk.told.Told;
import club.emberwell.member.Role;
import club.emberwell.talk.watch.Find;
import club.emberwell.talk.watch.Inbox;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What one's own watches found, and answers to one's own questions. */
@Path("/api/v1/inbox")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Watches")
public class InboxResource {
  private static final String ONE_OF = "Send one of upTo, find and told.";

  private final Inbox inbox;
  private final Told told;
  private final CurrentActor actor;

  InboxResource(Inbox inbox, Told told, CurrentActor actor) {
    this.inbox = inbox;
    this.told = told;
    this.actor = actor;
  }

  /**
   * A find.
   *
   * @param watch that found it; left out for an answer to one's own question
   * @param createdAt when it was found
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FindJson(
      long id,
      ItemJson item,
      MemberJson member,
      @Nullable WatchRef watch,
      Instant createdAt,
      boolean read) {
    static FindJson of(Find find) {
      return new FindJson(
          find.id(),
          new ItemJson(find.ref().kind(), find.ref().id(), find.title(), find.path()),
          MemberJson.of(find.author().id(), find.author().handle()),
          find.kept() == null ? null : new WatchRef(find.kept().id(), find.kept().label()),
          find.foundAt(),
          find.read());
    }
  }

  /** A watch by what it is called. */
  record WatchRef(UUID id, String label) {}

  /**
   * One page, newest first.
   *
   * @param unread over all pages; 100 stands for more than 99, here and in the others
   * @param newDecisions about one's own entries, see listMyDecisions
   * @param newAnswers to one's own flags, see listMyFlags
   * @param newChecks that came due in one's own rooms, see listRooms
   */
  record InboxJson(
      @JsonUnwrapped ListJson<FindJson> finds,
      int unread,
      int newDecisions,
      int newAnswers,
      int newChecks) {}

  /**
   * What was read: everything up to a find, that find alone, or what the desk said until then.
   *
   * @param upTo id of the newest find that was seen
   * @param find id of one find
   * @param told when the last decision or answer that was seen was given
   */
  @Schema(name = "InboxRead")
  record Read(Long upTo, Long find, Instant told) {}

  @GET
  @Operation(operationId = "readInbox", summary = "My inbox, newest first")
  public InboxJson list(@BeanParam ListQuery list) {
    Told.News news = told.news(actor.get());
    return new InboxJson(
        ListJson.of(inbox.page(actor.get(), list.part()), FindJson::of),
        inbox.unread(actor.get()),
        news.decisions(),
        news.answers(),
        news.checks());
  }

  @PUT
  @Path("read")
  @Operation(operationId = "markInboxRead", summary = "Mark as read", description = ONE_OF)
  public void read(Read sent) {
    if (Stream.of(sent.upTo(), sent.find(), sent.told()).filter(Objects::nonNull).count() != 1) {
      throw Problems.at(ProblemKind.INVALID_REQUEST, "/upTo", ONE_OF).exception();
    }
    if (sent.upTo() != null) {
      inbox.markAllRead(actor.get(), sent.upTo());
    } else if (sent.find() != null) {
      inbox.markRead(actor.get(), sent.find());
    } else {
      told.read(actor.get(), sent.told());
    }
  }
}
