package club.emberwell.web.talk;

import club.emberwell.access.PublicUrl;
import club.emberwell.member.Role;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.watch.Watch;
import club.emberwell.talk.watch.Watches;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own watches: kept searches, their names, mails and feeds. */
@Path("/watches")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class WatchPages extends Pages {
  private final Watches watches;
  private final PublicUrl url;

  WatchPages(Watches watches, PublicUrl url) {
    this.watches = watches;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance watches(List<Shown> watches, Form refused, int most);

    static native TemplateInstance watch(Shown watch, Form form);
  }

  /**
   * A watch with the whole address of its feed.
   *
   * @param feed null where it has none
   */
  record Shown(Watch watch, String feed) {}

  @GET
  public TemplateInstance list(@RestQuery String done) {
    say(
        done,
        "added".equals(done)
            ? "You watch this search now. New results come into your inbox."
            : "Saved.");
    return list(new Form());
  }

  private TemplateInstance list(Form refused) {
    List<Shown> all = watches.of(actor()).stream().map(this::shown).toList();
    return Templates.watches(all, refused, TalkLimits.WATCHES);
  }

  private Shown shown(Watch watch) {
    return new Shown(watch, watch.feedPath() == null ? null : url.of(watch.feedPath()));
  }

  /** What the form below a search sends. */
  @POST
  public Response add(SentForm sent) {
    return take(sent, Form::new, this::list)
        .store(s -> watches.add(actor(), s.typed("query"), s.typed("label"), false))
        .then("/watches?done=added");
  }

  @GET
  @Path("{id}")
  public TemplateInstance watch(@RestPath UUID id, @RestQuery String done) {
    say(done, "Saved.");
    Watch watch = watches.get(actor(), id);
    return Templates.watch(shown(watch), form(watch));
  }

  @POST
  @Path("{id}")
  public Response change(@RestPath UUID id, SentForm sent) {
    Supplier<Watch> watch = () -> watches.get(actor(), id);
    return take(sent, () -> form(watch.get()), form -> Templates.watch(shown(watch.get()), form))
        .run(
            s ->
                watches.change(
                    actor(), id, s.version(), s.text("label"), "yes".equals(s.text("mail"))))
        .then("/watches?done=changed");
  }

  private static Form form(Watch watch) {
    return new Form()
        .changing("watch", watch.version(), "/watches")
        .add(
            Field.of("label", "Name")
                .hint("Empty = the words of the search.")
                .maxLength(TalkLimits.WATCH_LABEL)
                .value(watch.label()))
        .add(
            Field.of("mail", "E-mail too")
                .hint("At most once a day, to the e-mail address of your account.")
                .choice("no", "no")
                .choice("yes", "yes")
                .value(watch.mail() ? "yes" : "no")
                .required());
  }

  @POST
  @Path("{id}/end")
  public Response end(@RestPath UUID id) {
    watches.remove(actor(), id);
    return to("/watches?done=ended");
  }

  @POST
  @Path("{id}/feed")
  public Response feed(@RestPath UUID id) {
    watches.renewFeed(actor(), id);
    return to("/watches/" + id + "?done=feed");
  }

  @POST
  @Path("{id}/feed/stop")
  public Response stopFeed(@RestPath UUID id) {
    watches.stopFeed(actor(), id);
    return to("/watches/" + id + "?done=feed");
  }
}
