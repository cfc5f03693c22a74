package club.emberwell.web.sample;

import club.emberwell.access.PublicUrl;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Reading;
import club.emberwell.sample.Sample;
import club.emberwell.sample.SampleLimits;
import club.emberwell.sample.SamplePosting;
import club.emberwell.sample.Samples;
import club.emberwell.sample.WrittenSample;
import club.emberwell.tag.QrCode;
import club.emberwell.tag.TagCode;
import club.emberwell.tag.Tagged;
import club.emberwell.tag.Tags;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.sample.SampleCard.Shows;
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
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own test pieces: found again by their tags, or by where they are kept. */
@Path("/samples")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class SamplePages extends Pages {
  private static final String LIST = "/samples";
  private static final String PATH = LIST + "/";
  private static final String NEW = PATH + "new";
  private static final int UNPROCESSABLE = 422;

  /** Labels printed at once: five sheets and more. */
  private static final int LABELS = 150;

  /** What was surely meant as a tag, right or wrong. */
  private static final Pattern LIKE_A_TAG = Pattern.compile("\\w{3,5}-\\w");

  private final Samples samples;
  private final SampleViews views;
  private final Tags tags;
  private final PublicUrl url;

  SamplePages(Samples samples, SampleViews views, Tags tags, PublicUrl url) {
    this.samples = samples;
    this.views = views;
    this.tags = tags;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance samples(Found found, Form search);

    static native TemplateInstance sample(SampleCard sample, QrCode square, String address);

    static native TemplateInstance write(Writing writing);

    static native TemplateInstance withdraw(SampleCard sample);

    static native TemplateInstance labels(List<Label> labels);
  }

  /**
   * A page of the list.
   *
   * @param text that was searched, empty where it was not
   */
  record Found(String text, List<SampleCard> samples, Pager pager) {}

  /**
   * The form in one state.
   *
   * @param action where it is sent to
   * @param shows null for a piece without report and grid
   * @param back where Cancel leads
   */
  record Writing(String action, Form form, Shows shows, String back) {}

  /**
   * @param q words, or a tag: that leads to the thing at once
   */
  @GET
  public Response samples(
      @RestQuery String q, @RestQuery("page") String number, @RestQuery String done) {
    say(done, "Removed. Its tag is not given to anything else.");
    Actor actor = actor();
    String text = q == null ? "" : q.strip();
    Reading<TagCode> tag = TagCode.read(text);
    Optional<Tagged> own = tag.value().flatMap(tags::find).filter(t -> actor.is(t.author()));
    if (own.isPresent()) {
      return to(own.get().path());
    }
    Form search = search(text);
    if (tag.value().isEmpty() && LIKE_A_TAG.matcher(text).matches()) {
      return refused(search.remarks(tag.at("/q").remarks()), text);
    }
    try {
      Slice<Sample> found = samples.mine(actor, text, Pager.part(number));
      String base = LIST + (text.isEmpty() ? "" : "?q=" + encoded(text));
      return Response.ok(
              Templates.samples(
                  new Found(text, views.cards(actor, found.rows()), Pager.of(found, base)), search))
          .build();
    } catch (EntryRefused e) {
      return refused(search.remarks(e.remarks()), text);
    }
  }

  private static Form search(String text) {
    return new Form()
        .add(
            Field.of("q", "Tag, box, place, material or note")
                .maxLength(SampleLimits.SEARCH)
                .value(text));
  }

  private Response refused(Form search, String text) {
    page.fail();
    Found nothing = new Found(text, List.of(), new Pager(null, null));
    return Response.status(UNPROCESSABLE).entity(Templates.samples(nothing, search)).build();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /**
   * The form for a new sample.
   *
   * @param report it shows
   * @param grid or the grid it shows
   */
  @GET
  @Path("new")
  public TemplateInstance blank(@RestQuery String report, @RestQuery String grid) {
    WrittenSample of =
        new WrittenSample(SentForm.readId(report), SentForm.readId(grid), null, null, null, null);
    return shown(form(UUID.randomUUID(), of));
  }

  private static Form form(UUID id, WrittenSample of) {
    return SampleForm.of(id, of.report() != null || of.grid() != null).fill(SampleForm.values(of));
  }

  private TemplateInstance shown(Form form) {
    Shows shows = shows(form);
    String back = shows == null ? LIST : shows.href();
    return Templates.write(new Writing(NEW, form, shows, back));
  }

  private Shows shows(Form form) {
    UUID report = SentForm.readId(form.field("report").getValue());
    UUID grid = SentForm.readId(form.field("grid").getValue());
    return views.shows(actor(), new WrittenSample(report, grid, null, null, null, null));
  }

  @POST
  @Path("new")
  public Response add(SentForm sent) {
    return take(sent, () -> form(UUID.randomUUID(), SampleForm.written(sent)), this::shown)
        .store(s -> samples.add(actor(), posting(s)).sample())
        .then(sample -> PATH + sample.id() + "?done=added");
  }

  private static SamplePosting posting(SentForm sent) {
    return SamplePosting.of(sent.id("id"), SampleForm.written(sent));
  }

  @GET
  @Path("{id}")
  public TemplateInstance sample(@RestPath UUID id, @RestQuery String done) {
    say(
        done,
        "added".equals(done) ? "Saved. Write the tag on the piece, or print its label." : "Saved.");
    Sample sample = samples.get(actor(), id);
    String address = url.of(sample.tag().path());
    return Templates.sample(views.card(actor(), sample), QrCode.of(address), address);
  }

  @GET
  @Path("{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return editing(id, stored(id));
  }

  private Form stored(UUID id) {
    Sample sample = samples.get(actor(), id);
    return form(null, sample.written()).changing("sample", sample.version(), PATH + id);
  }

  private TemplateInstance editing(UUID id, Form form) {
    return Templates.write(new Writing(PATH + id + "/edit", form, shows(form), PATH + id));
  }

  @POST
  @Path("{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> stored(id), form -> editing(id, form))
        .store(s -> samples.revise(actor(), id, s.version(), SampleForm.written(s)))
        .then(PATH + id + "?done=changed");
  }

  @GET
  @Path("{id}/withdraw")
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(views.card(actor(), samples.get(actor(), id)));
  }

  @POST
  @Path("{id}/withdraw")
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    samples.withdraw(actor(), id, version);
    return to(LIST + "?done=removed");
  }

  /**
   * Labels in true size, several on a sheet.
   *
   * @param ids of the chosen samples; none = the newest ones
   */
  @GET
  @Path("labels")
  public TemplateInstance labels(@RestQuery("id") List<String> ids) {
    Actor actor = actor();
    List<UUID> chosen =
        ids.stream().map(SentForm::readId).filter(Objects::nonNull).limit(LABELS).toList();
    List<Sample> printed =
        chosen.isEmpty()
            ? samples.mine(actor, null, Part.FIRST).rows()
            : samples.mine(actor, chosen);
    return Templates.labels(
        views.cards(actor, printed).stream()
            .map(card -> Label.of(card, square(card.code())))
            .toList());
  }

  private QrCode square(String code) {
    return QrCode.of(url.of(new TagCode(code).path()));
  }
}
