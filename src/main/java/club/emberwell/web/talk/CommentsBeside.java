package club.emberwell.web.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.SentForm;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.UUID;

/** What members say under a report. */
@Named("comments")
@ApplicationScoped
public class CommentsBeside {
  private final TalkService talk;
  private final TieLabels labels;
  private final CurrentActor current;
  private final Opened opened;
  private final RoutingContext request;

  CommentsBeside(
      TalkService talk,
      TieLabels labels,
      CurrentActor current,
      Opened opened,
      RoutingContext request) {
    this.talk = talk;
    this.labels = labels;
    this.current = current;
    this.opened = opened;
    this.request = request;
  }

  /**
   * A page of comments.
   *
   * @param count of those that all can see
   * @param form a blank one
   */
  public record Under(long count, List<EntryView> comments, Pager pager, Form form) {
    public String getHeading() {
      if (count == 0) {
        return comments.isEmpty() ? "No comment yet" : "Comments";
      }
      return count == 1 ? "1 comment" : count + " comments";
    }
  }

  /**
   * The page that the address asks for: by number, or the one with a certain comment on it. One
   * statement where there are few, two where they go on.
   */
  public Under under(String report) {
    UUID id = UUID.fromString(report);
    Actor actor = current.get();
    UUID wanted = SentForm.readId(request.request().getParam("comment"));
    Slice<TalkEntry> page =
        wanted == null
            ? talk.comments(actor, id, Pager.part(request.request().getParam("page")))
            : talk.commentsAt(actor, id, wanted);
    List<TalkEntry> rows = page.rows();
    if (!rows.isEmpty()) {
      opened.saw(rows.stream().map(TalkEntry::id).toList());
    }
    boolean whole = page.page() == 0 && !page.more();
    return new Under(
        whole ? rows.stream().filter(TalkEntry::isLive).count() : talk.commentCount(id),
        rows.stream().map(comment -> EntryView.of(comment, actor, labels)).toList(),
        Pager.of(page, "/reports/" + id),
        CommentPages.blank());
  }
}
