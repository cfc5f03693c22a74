package club.emberwell.web.desk;

import club.emberwell.desk.home.People;
import club.emberwell.desk.home.People.Person;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
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
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Members as moderators deal with them. */
@Path("/desk/members")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class MemberPages extends Pages {
  private static final String PATH = "/desk/members/";

  /** Who joined so lately is new. */
  private static final Duration WEEK = Duration.ofDays(7);

  private final People people;

  MemberPages(People people) {
    this.people = people;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance members(String q, boolean fresh, Listing<Person> list);

    static native TemplateInstance member(
        Person person, boolean self, Listing<ItemRow> list, Form form);
  }

  @GET
  public TemplateInstance members(
      @RestQuery String q, @RestQuery("new") String joined, @RestQuery Integer page) {
    String start = q == null ? "" : q;
    boolean fresh = joined != null;
    String path =
        "/desk/members?q="
            + URLEncoder.encode(start, StandardCharsets.UTF_8)
            + (fresh ? "&new=week" : "");
    Instant since = fresh ? Instant.now().minus(WEEK) : Instant.EPOCH;
    return Templates.members(
        start,
        fresh,
        Listing.of(
            "Members", "Nobody.", people.find(actor(), start, since, Part.page(page)), path));
  }

  @GET
  @Path("{id}")
  public TemplateInstance member(@RestPath UUID id, @RestQuery Integer page) {
    return page(id, page, form());
  }

  private TemplateInstance page(UUID id, Integer page, Form form) {
    Person person = people.one(actor(), id);
    return Templates.member(
        person,
        actor().is(id),
        Listing.of(
            "What they posted",
            "Nothing.",
            people.entries(actor(), id, Part.page(page)).map(ItemRow::of),
            PATH + id),
        form);
  }

  private static Form form() {
    return DeskForms.because("The log records it.");
  }

  @POST
  @Path("{id}/ban")
  public Response ban(@RestPath UUID id, SentForm sent) {
    return take(sent, MemberPages::form, form -> page(id, 0, form))
        .run(s -> people.ban(actor(), id, s.typed("reason")))
        .then(PATH + id);
  }

  @POST
  @Path("{id}/unban")
  public Response unban(@RestPath UUID id, SentForm sent) {
    return take(sent, MemberPages::form, form -> page(id, 0, form))
        .run(s -> people.unban(actor(), id, s.typed("reason")))
        .then(PATH + id);
  }

  @POST
  @Path("{id}/trust")
  public Response trust(@RestPath UUID id, @RestForm String trusted) {
    people.trust(actor(), id, "yes".equals(trusted));
    return to(PATH + id);
  }
}
