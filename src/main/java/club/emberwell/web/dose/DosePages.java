package club.emberwell.web.dose;

import club.emberwell.bench.Machines;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import club.emberwell.report.reading.DoseCalculator;
import club.emberwell.report.reading.DoseCalculator.Answer;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.web.bench.MachineForm;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
import club.emberwell.web.report.SettingFields;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;

/** The public calculators. They store nothing; their address holds all that was typed. */
@Path("/dose")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class DosePages extends Pages {
  private static final int UNPROCESSABLE = 422;

  private final Machines machines;
  private final OwnEyewear eyewear;

  DosePages(Machines machines, OwnEyewear eyewear) {
    this.machines = machines;
    this.eyewear = eyewear;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance dose(DoseView view);

    static native TemplateInstance eyes(EyesView view);

    static native TemplateInstance air(AirView view);
  }

  /** A link that fills in one of the reader's machines. */
  record Own(String href, String name) {}

  /**
   * The calculator in one state.
   *
   * @param values derived from the settings; empty before anything was asked
   * @param missing what further values would need
   * @param doubts what is possible but unlikely about the settings
   * @param notes what was assumed
   * @param equal null where there is nothing to keep equal
   */
  record DoseView(
      Form form,
      List<Own> machines,
      List<Opened> values,
      List<String> missing,
      List<Remark> doubts,
      List<String> notes,
      EqualDose equal,
      List<String> wavelengths) {}

  @GET
  public Response dose(@Context UriInfo uri) {
    SentForm sent = new SentForm(uri.getQueryParameters());
    if (sent.lacks(DoseForm.ASKING)) {
      preview(uri, "", "Dose, power and pulse values of laser settings, with every formula.");
      return Response.ok(Templates.dose(view(sent, List.of(), null, null))).build();
    }
    UnitPreferences reader = actor().units();
    WrittenSettings settings = SettingFields.written(sent);
    EqualDose.Wanted wanted = EqualDose.wanted(sent, reader.style());
    List<Remark> faults = new ArrayList<>(sent.remarks());
    faults.addAll(wanted.remarks());
    Answer answer = null;
    try {
      answer =
          DoseCalculator.compute(
              MachineForm.laser(sent, "laser."), sent.text("process"), settings, reader.style());
    } catch (EntryRefused e) {
      faults.addAll(e.remarks());
    }
    if (faults.stream().anyMatch(Remark::isError)) {
      page.fail();
      return Response.status(UNPROCESSABLE)
          .entity(Templates.dose(view(sent, faults, null, null)))
          .build();
    }
    EqualDose equal = EqualDose.of(answer, wanted.settings(), reader);
    return Response.ok(Templates.dose(view(sent, answer.remarks(), answer, equal))).build();
  }

  /** The blank form may be found; what somebody typed into it is their own. */
  private void preview(UriInfo uri, String path, String description) {
    page.preview(
        Preview.of("/dose" + path, description + " Nothing is stored.")
            .listedIf(uri.getQueryParameters().isEmpty()));
  }

  private DoseView view(SentForm sent, List<Remark> remarks, Answer answer, EqualDose equal) {
    Actor actor = actor();
    Form form = DoseForm.of(sent.values()).remarks(remarks);
    List<Own> own =
        machines.of(actor).stream().map(m -> new Own(DoseForm.withMachine(m), m.name())).toList();
    return new DoseView(
        form,
        own,
        answer == null ? List.of() : Opened.of(answer, actor.units()),
        answer == null ? List.of() : Opened.missing(answer),
        answer == null ? List.of() : remarks.stream().filter(DosePages::isDoubt).toList(),
        answer == null ? List.of() : notes(remarks),
        equal,
        UsualWavelength.all());
  }

  private static boolean isDoubt(Remark remark) {
    return remark.severity() == Severity.WARNING;
  }

  private static List<String> notes(List<Remark> remarks) {
    return remarks.stream().filter(r -> r.severity() == Severity.INFO).map(Remark::detail).toList();
  }

  @GET
  @Path("eyes")
  public Response eyes(@Context UriInfo uri) {
    preview(uri, "/eyes", "Eye protection and distances for a laser beam that escapes.");
    Actor actor = actor();
    EyesView view =
        EyesView.of(
            new SentForm(uri.getQueryParameters()),
            actor.units().style(),
            machines.of(actor),
            eyewear.of(actor));
    return answer(view.form(), Templates.eyes(view));
  }

  @GET
  @Path("air")
  public Response air(@Context UriInfo uri) {
    preview(uri, "/air", "Air in the duct and in the room for laser work with fumes.");
    AirView view = AirView.of(new SentForm(uri.getQueryParameters()), actor().units().style());
    return answer(view.form(), Templates.air(view));
  }

  // Told before the template renders: its title says whether the form was refused.
  private Response answer(Form form, TemplateInstance template) {
    if (form.isFailed()) {
      page.fail();
      return Response.status(UNPROCESSABLE).entity(template).build();
    }
    return Response.ok(template).build();
  }
}
