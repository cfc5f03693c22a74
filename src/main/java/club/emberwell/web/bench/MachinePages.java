package club.emberwell.web.bench;

import club.emberwell.bench.Machine;
import club.emberwell.bench.MachineReader;
import club.emberwell.bench.Machines;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.laser.LaserSource;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.ReportService;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
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
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;

/** Adding, changing and taking away one's machines. */
@Path("/bench/machines")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class MachinePages extends Pages {
  private static final String PATH = "/bench/machines/";
  private static final String NEW = PATH + "new";

  private final Machines machines;
  private final ReportService reports;

  MachinePages(Machines machines, ReportService reports) {
    this.machines = machines;
    this.reports = reports;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance machine(Entry entry);

    static native TemplateInstance delete(MachineCard machine);
  }

  /**
   * The form in one state.
   *
   * @param id null for a new machine
   * @param wavelengths suggestions
   * @param models that members' machines have
   */
  record Entry(UUID id, Form form, List<String> wavelengths, List<String> models) {
    /** All that a beginner has to say. */
    private static final Set<String> ASKED = Set.of("name", "source", "ratedPower", "motion");

    public String action() {
      return id == null ? NEW : PATH + id;
    }

    public List<Kind> getKinds() {
      return form.field("source").getOptions().stream()
          .map(option -> new Kind(option, LaserSource.of(option.value()).orElseThrow()))
          .toList();
    }

    private Stream<Field> folded() {
      return form.getFields().stream().filter(field -> !ASKED.contains(field.getName()));
    }

    /** What has something to correct stands open. */
    public boolean isOpen() {
      return folded().anyMatch(f -> f.isFailed() || f.isWarned());
    }

    /** How many of the folded fields hold something. */
    public long getFilled() {
      return folded().filter(f -> !f.getValue().isEmpty()).count();
    }

    /** The lenses to choose from: what is typed, and those of each kind. */
    public List<OfKind> getLenses() {
      return form.field(UsualLens.FIELD).getOptions().stream()
          .map(option -> new OfKind(option, option.value().split("/")[0]))
          .toList();
    }
  }

  /** A lens to choose, and the type of laser that has it; empty = any. */
  record OfKind(Field.Option option, String kind) {}

  /** A type of laser to choose, and by what one knows it. */
  record Kind(Field.Option option, LaserSource source) {}

  private TemplateInstance shown(UUID id, Form form) {
    return Templates.machine(
        new Entry(id, form, UsualWavelength.all(), reports.machineModels(actor())));
  }

  @GET
  @Path("new")
  public TemplateInstance blank() {
    return shown(null, MachineForm.blank());
  }

  @POST
  @Path("new")
  public Response add(SentForm sent) {
    Actor actor = actor();
    return take(sent, MachineForm::blank, form -> shown(null, form))
        .store(s -> machines.add(actor, null, read(s), actor.units().style()))
        .then("/bench?done=added");
  }

  @GET
  @Path("{id}")
  public TemplateInstance edit(@RestPath UUID id) {
    return shown(id, form(id));
  }

  private Form form(UUID id) {
    Machine machine = machines.get(actor(), id);
    return MachineForm.blank()
        .changing("machine", machine.version(), PATH + id)
        .fill(MachineForm.values(machine.written()));
  }

  @POST
  @Path("{id}")
  public Response edit(@RestPath UUID id, SentForm sent) {
    Actor actor = actor();
    machines.get(actor, id);
    return take(sent, () -> form(id), form -> shown(id, form))
        .store(s -> machines.revise(actor, id, s.version(), read(s), actor.units().style()))
        .then("/bench?done=changed");
  }

  /** What was written, if it can be read and what is unlikely was said to be meant. */
  private WrittenMachine read(SentForm sent) {
    WrittenMachine written = MachineForm.written(sent);
    MachineReader.Result read = MachineReader.read(written, actor().units().style());
    if (!read.readable()) {
      throw new EntryRefused(read.remarks());
    }
    List<Remark> doubts = read.unconfirmed(written.confirmed());
    if (!doubts.isEmpty()) {
      throw new EntryUnconfirmed(doubts);
    }
    return written;
  }

  @GET
  @Path("{id}/delete")
  public TemplateInstance askDelete(@RestPath UUID id) {
    Actor actor = actor();
    return Templates.delete(
        MachineCard.of(machines.get(actor, id), actor.units(), List.of(), Optional.empty()));
  }

  @POST
  @Path("{id}/delete")
  public Response delete(@RestPath UUID id) {
    machines.delete(actor(), id);
    return to("/bench?done=deleted");
  }
}
