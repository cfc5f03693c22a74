package club.emberwell.web.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.Watch;
import club.emberwell.talk.Watches;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own watches: kept searches, their names, mails and feeds. */
@Path("/watches")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class WatchPages {
  private final Watches watches;
  private final PublicUrl url;
  private final CurrentActor current;
  private final PageFrame page;

  WatchPages(Watches watches, PublicUrl url, CurrentActor current, PageFrame page) {
    this.watches = watches;
    this.url = url;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance watches(List<Shown> watches, Form refused, int most);

    static native TemplateInstance watch(Shown watch, Form form, int version);
  }

  /**
   * A watch with the whole address of its feed.
   *
   * @param feed null where it has none
   */
  record Shown(Watch watch, String feed) {}

  @GET
  public TemplateInstance list(@RestQuery String done) {
    if ("added".equals(done)) {
      page.say("Watched from now on. What is new for it comes into your inbox.");
    } else if (done != null) {
      page.say("Saved.");
    }
    return Templates.watches(all(), new Form(), TalkLimits.WATCHES);
  }

  private List<Shown> all() {
    return watches.of(current.get()).stream().map(this::shown).toList();
  }

  private Shown shown(Watch watch) {
    return new Shown(watch, watch.feedPath() == null ? null : url.of(watch.feedPath()));
  }

  /** What the form below a search sends. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response add(@RestForm String query, @RestForm String label) {
    try {
      watches.add(current.get(), query, label, false);
      return to("/watches?done=added");
    } catch (EntryRefused e) {
      page.fail();
      Form refused = new Form().remarks(e.remarks());
      return Response.status(TalkViews.UNPROCESSABLE)
          .entity(Templates.watches(all(), refused, TalkLimits.WATCHES))
          .build();
    }
  }

  @GET
  @Path("{id}")
  public TemplateInstance watch(@RestPath UUID id, @RestQuery String done) {
    if (done != null) {
      page.say("Saved.");
    }
    Watch watch = watches.get(current.get(), id);
    return Templates.watch(shown(watch), form(watch.label(), yes(watch.mail())), watch.version());
  }

  @POST
  @Path("{id}")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response change(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    SentForm reader = new SentForm(sent);
    int version = TalkForm.version(reader);
    String label = reader.text("label");
    boolean mail = "yes".equals(reader.text("mail"));
    try {
      watches.change(current.get(), id, version, label, mail);
      return to("/watches?done=changed");
    } catch (EntryRefused e) {
      return again(
          id, form(label, yes(mail)).remarks(e.remarks()), version, TalkViews.UNPROCESSABLE);
    } catch (EntryChanged e) {
      Remark changed =
          Remark.error(
              RemarkId.CHANGED, "", "This was changed elsewhere since. Sending again replaces it.");
      return again(
          id,
          form(label, yes(mail)).remarks(List.of(changed)),
          e.version(),
          Response.Status.PRECONDITION_FAILED.getStatusCode());
    }
  }

  private Response again(UUID id, Form form, int version, int status) {
    page.fail();
    Shown watch = shown(watches.get(current.get(), id));
    return Response.status(status).entity(Templates.watch(watch, form, version)).build();
  }

  private static String yes(boolean mail) {
    return mail ? "yes" : "no";
  }

  private static Form form(String label, String mail) {
    return new Form()
        .add(
            Field.of("label", "What to call it")
                .hint("Leave it empty for the search's own words.")
                .maxLength(TalkLimits.WATCH_LABEL)
                .value(label))
        .add(
            Field.of("mail", "By mail too")
                .hint("Once a day at most, to your account's mail address.")
                .options(List.of(new Option("no", "no", false), new Option("yes", "yes", false)))
                .value(mail)
                .required());
  }

  @POST
  @Path("{id}/end")
  public Response end(@RestPath UUID id) {
    watches.remove(current.get(), id);
    return to("/watches?done=ended");
  }

  @POST
  @Path("{id}/feed")
  public Response feed(@RestPath UUID id) {
    watches.renewFeed(current.get(), id);
    return to("/watches/" + id + "?done=feed");
  }

  @POST
  @Path("{id}/feed/stop")
  public Response stopFeed(@RestPath UUID id) {
    watches.stopFeed(current.get(), id);
    return to("/watches/" + id + "?done=feed");
  }

  private static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }
}
