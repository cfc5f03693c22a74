package club.emberwell.api.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListQuery;
import club.emberwell.listing.Slice;
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
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What one's own watches found, and answers to one's own questions. */
@Path("/api/v1/inbox")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Watches")
public class InboxResource {
  private final Inbox inbox;
  private final CurrentActor actor;

  InboxResource(Inbox inbox, CurrentActor actor) {
    this.inbox = inbox;
    this.actor = actor;
  }

  /**
   * A find.
   *
   * @param watch what the watch is called; left out for an answer to one's own question
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FindJson(
      long id, @JsonUnwrapped Found found, String watch, Instant foundAt, boolean read) {

    /**
     * What was found.
     *
     * @param kind {@code report}, {@code question}, {@code notice} or {@code answer}
     * @param entry id of the report or the entry
     * @param path where a person reads it
     */
    record Found(String kind, UUID entry, String title, String member, String path) {}

    static FindJson of(Find find) {
      return new FindJson(
          find.id(),
          new Found(find.entity(), find.entryId(), find.title(), find.by(), find.path()),
          find.watch(),
          find.foundAt(),
          find.read());
    }
  }

  /**
   * One page, newest first.
   *
   * @param unread over all pages; 100 stands for more than 99
   */
  record Listing(List<FindJson> finds, int unread, int page, boolean more) {}

  /**
   * What was read: everything up to a find, or that find alone.
   *
   * @param upTo id of the newest find that was seen
   * @param find id of one find
   */
  record Read(Long upTo, Long find) {}

  @GET
  @Operation(summary = "Your inbox")
  public Listing list(@BeanParam ListQuery list) {
    Slice<Find> found = inbox.page(actor.get(), list.part());
    return new Listing(
        found.rows().stream().map(FindJson::of).toList(),
        inbox.unread(actor.get()),
        found.page(),
        found.more());
  }

  @PUT
  @Path("read")
  @Operation(summary = "Mark as read", description = "Send either upTo or find.")
  public void read(Read sent) {
    if ((sent.upTo() == null) == (sent.find() == null)) {
      throw Problems.at(ProblemKind.INVALID_REQUEST, "/upTo", "Send either upTo or find.")
          .exception();
    }
    if (sent.upTo() != null) {
      inbox.markAllRead(actor.get(), sent.upTo());
    } else {
      inbox.markRead(actor.get(), sent.find());
    }
  }
}
