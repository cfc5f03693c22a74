package club.emberwell.web.eyewear;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.eyewear.Glasses;
import club.emberwell.eyewear.GlassesPosting;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Remark;
import club.emberwell.web.dose.EyesLink;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.trial.TrialText;
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
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own laser glasses, and what they do for each of one's machines. */
@Path("/eyewear")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class EyewearPages extends Pages {
  private static final String LIST = "/eyewear";
  private static final String PATH = LIST + "/";
  private static final String NEW = PATH + "new";

  private final OwnEyewear eyewear;
  private final Machines machines;

  EyewearPages(OwnEyewear eyewear, Machines machines) {
    this.eyewear = eyewear;
    this.machines = machines;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance list(List<Pair> pairs);

    static native TemplateInstance glasses(Pair pair);

    static native TemplateInstance machine(Eyes eyes);

    static native TemplateInstance write(Writing writing);

    static native TemplateInstance withdraw(Pair pair);
  }

  /**
   * A pair as its owner sees it.
   *
   * @param readings what each line of it means, and what of it was left out
   * @param fits its owner's machines, the worst news first
   */
  record Pair(
      UUID id,
      int version,
      String name,
      String marking,
      String notes,
      List<String> readings,
      List<FitLine> fits) {
    public String getClosing() {
      return EyeLimits.CLOSING;
    }
  }

  /**
   * A machine beside its owner's glasses.
   *
   * @param fits the worst first
   * @param calculator where the same beam can be worked out with more said of it
   */
  record Eyes(
      UUID machine,
      String name,
      String laser,
      List<FitLine> fits,
      List<String> warnings,
      EyeWork.Numbers numbers,
      String calculator) {
    public String getClosing() {
      return EyeLimits.CLOSING;
    }
  }

  /**
   * The form in one state.
   *
   * @param action where it is sent to
   * @param back where Cancel leads
   */
  record Writing(String action, Form form, String back) {}

  @GET
  public TemplateInstance list(@RestQuery String done) {
    say(done, "removed".equals(done) ? "Removed." : "Saved.");
    List<Machine> own = machines.of(actor());
    return Templates.list(eyewear.of(actor()).stream().map(pair -> card(pair, own)).toList());
  }

  private Pair card(Glasses glasses, List<Machine> own) {
    NumberStyle style = actor().units().style();
    return new Pair(
        glasses.id(),
        glasses.version(),
        glasses.name(),
        glasses.written().marking(),
        glasses.written().notes(),
        Stream.concat(
                glasses.printed().stream().map(printed -> printed.sentence(style)),
                glasses.remarks().stream().map(Remark::detail))
            .toList(),
        fits(own, glasses, style));
  }

  private static List<FitLine> fits(List<Machine> own, Glasses glasses, NumberStyle style) {
    return own.stream()
        .map(machine -> EyeProtection.of(machine, List.of(glasses), style))
        .sorted(Comparator.comparing(eyes -> eyes.fits().get(0).coverage().verdict()))
        .map(eyes -> FitLine.of(eyes.machine(), eyes.fits().get(0).coverage()))
        .toList();
  }

  @GET
  @Path("new")
  public TemplateInstance blank() {
    return shown(GlassesForm.of(UUID.randomUUID()));
  }

  private static TemplateInstance shown(Form form) {
    return Templates.write(new Writing(NEW, form, LIST));
  }

  @POST
  @Path("new")
  public Response add(SentForm sent) {
    return take(sent, () -> GlassesForm.of(UUID.randomUUID()), EyewearPages::shown)
        .store(s -> eyewear.add(actor(), new GlassesPosting(s.id("id"), GlassesForm.written(s))))
        .then(LIST + "?done=added");
  }

  @GET
  @Path("machines/{machine}")
  public TemplateInstance machine(@RestPath UUID machine) {
    Actor actor = actor();
    UnitPreferences reader = actor.units();
    EyeProtection eyes =
        EyeProtection.of(machines.get(actor, machine), eyewear.of(actor), reader.style());
    return Templates.machine(
        new Eyes(
            machine,
            eyes.machine().name(),
            TrialText.laser(eyes.machine().laser(), reader),
            eyes.fits().stream().map(FitLine::of).toList(),
            eyes.warnings(),
            EyeWork.of(eyes, reader.style()),
            EyesLink.of(eyes.machine())));
  }

  @GET
  @Path("{id}")
  public TemplateInstance glasses(@RestPath UUID id, @RestQuery String done) {
    say(done, "Saved.");
    return Templates.glasses(card(eyewear.get(actor(), id), machines.of(actor())));
  }

  @GET
  @Path("{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return editing(id, stored(id));
  }

  private Form stored(UUID id) {
    Glasses glasses = eyewear.get(actor(), id);
    return GlassesForm.of(null)
        .changing("pair of glasses", glasses.version(), PATH + id)
        .fill(GlassesForm.values(glasses.written()));
  }

  private static TemplateInstance editing(UUID id, Form form) {
    return Templates.write(new Writing(PATH + id + "/edit", form, PATH + id));
  }

  @POST
  @Path("{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> stored(id), form -> editing(id, form))
        .store(s -> eyewear.revise(actor(), id, s.version(), GlassesForm.written(s)))
        .then(PATH + id + "?done=changed");
  }

  @GET
  @Path("{id}/withdraw")
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(card(eyewear.get(actor(), id), List.of()));
  }

  @POST
  @Path("{id}/withdraw")
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    eyewear.withdraw(actor(), id, version);
    return to(LIST + "?done=removed");
  }
}
