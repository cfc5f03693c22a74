package club.emberwell.web.club;

import club.emberwell.hook.Delivery;
import club.emberwell.hook.HookEvent;
import club.emberwell.hook.HookLimits;
import club.emberwell.hook.Webhook;
import club.emberwell.hook.Webhooks;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
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

/** Which addresses are told what happens here. */
@Path(HookPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class HookPages extends Pages {
  static final String PATH = "/desk/club/webhooks";

  private final Webhooks hooks;

  HookPages(Webhooks hooks) {
    this.hooks = hooks;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance webhooks(List<Webhook> hooks, Form form, Webhook.Fresh made);

    static native TemplateInstance webhook(
        Webhook hook, List<Delivery> deliveries, Forms forms, Webhook.Fresh made);
  }

  /**
   * What can be sent from the page of a webhook.
   *
   * @param secret asks for a new one
   */
  record Forms(Form change, Form secret) {}

  @GET
  public TemplateInstance webhooks(@RestQuery String done) {
    say(done, "The webhook is deleted.");
    return list(form());
  }

  private TemplateInstance list(Form form) {
    return Templates.webhooks(hooks.all(actor()), form, null);
  }

  @POST
  public Response add(SentForm sent) {
    return take(sent, HookPages::form, this::list)
        .store(s -> hooks.add(actor(), draft(s, true)))
        .showOnce(made -> Templates.webhooks(hooks.all(actor()), form(), made));
  }

  private static Webhook.Draft draft(SentForm sent, Boolean active) {
    return new Webhook.Draft(sent.text("label"), sent.text("url"), sent.all("events"), active);
  }

  @GET
  @Path("{id}")
  public TemplateInstance webhook(@RestPath UUID id, @RestQuery String done) {
    say(
        done,
        "test".equals(done)
            ? "The test is on its way. Load this page again in some seconds."
            : "Saved.");
    Webhook hook = hooks.get(actor(), id);
    return shown(hook, new Forms(form(hook), new Form()), null);
  }

  private TemplateInstance shown(Webhook hook, Forms forms, Webhook.Fresh made) {
    List<Delivery> latest = hooks.deliveries(actor(), hook.id(), Part.FIRST).rows();
    return Templates.webhook(hook, latest, forms, made);
  }

  @POST
  @Path("{id}")
  public Response change(@RestPath UUID id, SentForm sent) {
    Supplier<Webhook> hook = () -> hooks.get(actor(), id);
    return take(sent, () -> form(hook.get()), form -> changing(hook.get(), form))
        .store(s -> hooks.change(actor(), id, s.version(), draft(s, s.flag("active"))))
        .then(PATH + "/" + id + "?done=changed");
  }

  @POST
  @Path("{id}/test")
  public Response test(@RestPath UUID id) {
    Supplier<Webhook> hook = () -> hooks.get(actor(), id);
    return press(() -> form(hook.get()), form -> changing(hook.get(), form))
        .run(s -> hooks.test(actor(), id))
        .then(PATH + "/" + id + "?done=test");
  }

  @POST
  @Path("{id}/secret")
  public Response renewSecret(@RestPath UUID id, SentForm sent) {
    Supplier<Webhook> hook = () -> hooks.get(actor(), id);
    return take(
            sent, Form::new, asked -> shown(hook.get(), new Forms(form(hook.get()), asked), null))
        .attempt(s -> hooks.renewSecret(actor(), id, given(s)))
        .showOnce(made -> shown(made.webhook(), new Forms(form(made.webhook()), new Form()), made));
  }

  private TemplateInstance changing(Webhook hook, Form form) {
    return shown(hook, new Forms(form, new Form()), null);
  }

  @POST
  @Path("{id}/delete")
  public Response remove(@RestPath UUID id) {
    hooks.remove(actor(), id);
    return to(PATH + "?done=deleted");
  }

  private static Form form() {
    return new Form()
        .add(
            Field.of("label", "Name")
                .hint("What receives it, such as “Chat of the workshop”.")
                .maxLength(HookLimits.LABEL)
                .required())
        .add(
            Field.of("url", "Address")
                .hint(
                    "Where we send, with https:// first. Anybody who knows it can often post"
                        + " there.")
                .inputMode("url")
                .autocomplete("off")
                .maxLength(HookLimits.URL)
                .required())
        .add(
            Field.of("events", "Tell it when")
                .several()
                .choices(HookEvent.CHOICES, HookEvent::code, HookEvent::label));
  }

  private static Form form(Webhook hook) {
    Form form =
        form()
            .changing("webhook", hook.version(), hook.path())
            .add(
                Field.of("active", "State")
                    .choice("true", "On")
                    .choice("false", "Off")
                    .value(Boolean.toString(hook.on()))
                    .required());
    form.field("label").value(hook.label());
    form.field("url").value(hook.url());
    form.field("events").chosen(hook.events().stream().map(HookEvent::code).toList());
    return form;
  }
}
