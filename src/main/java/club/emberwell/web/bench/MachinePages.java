package club.emberwell.web.bench;

import club.emberwell.access.CurrentActor;
import club.emberwell.bench.Machine;
import club.emberwell.bench.MachineReader;
import club.emberwell.bench.Machines;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
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
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Adding, changing and taking away one's machines. */
@Path("/bench/machines")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class MachinePages {
  private static final int UNPROCESSABLE = 422;
  private static final String NEW = "/bench/machines/new";

  private final Machines machines;
  private final CurrentActor current;
  private final PageFrame page;

  MachinePages(Machines machines, CurrentActor current, PageFrame page) {
    this.machines = machines;
    this.current = current;
    this.page = page;
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
   * @param version of the machine the change is based on, or null
   * @param doubts warnings to confirm before it is stored as it is
   * @param confirmed pointers that sending the form confirms: the doubts and those before
   * @param now what somebody stored meanwhile, or null
   * @param wavelengths suggestions
   */
  record Entry(
      UUID id,
      Integer version,
      Form form,
      List<Remark> doubts,
      Set<String> confirmed,
      MachineCard now,
      List<String> wavelengths) {
    public String action() {
      return id == null ? NEW : "/bench/machines/" + id;
    }
  }

  @GET
  @Path("new")
  public TemplateInstance blank() {
    return Templates.machine(
        entry(null, null, new Shown(Map.of(), List.of()), List.of(), List.of(), null));
  }

  @POST
  @Path("new")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response add(MultivaluedMap<String, String> sent) {
    return store(null, new SentForm(sent));
  }

  @GET
  @Path("{id}")
  public TemplateInstance edit(@RestPath UUID id) {
    Machine machine = machines.get(current.get(), id);
    Shown shown = new Shown(MachineForm.values(machine.written()), List.of());
    return Templates.machine(entry(id, machine.version(), shown, List.of(), List.of(), null));
  }

  @POST
  @Path("{id}")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response edit(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    machines.get(current.get(), id);
    return store(id, new SentForm(sent));
  }

  @GET
  @Path("{id}/delete")
  public TemplateInstance askDelete(@RestPath UUID id) {
    Actor actor = current.get();
    return Templates.delete(MachineCard.of(machines.get(actor, id), actor.units()));
  }

  @POST
  @Path("{id}/delete")
  public Response delete(@RestPath UUID id) {
    machines.delete(current.get(), id);
    return to("/bench?done=deleted");
  }

  private Response store(UUID id, SentForm sent) {
    Actor actor = current.get();
    Integer version = version(sent);
    WrittenMachine written = MachineForm.written(sent);
    Shown shown = new Shown(sent.values(), sent.confirmed());
    if (sent.onlyAsked()) {
      Entry again = entry(id, version, shown, List.of(), List.of(), null);
      return Response.ok(Templates.machine(again)).build();
    }
    MachineReader.Result read = MachineReader.read(written, actor.units().style());
    List<Remark> doubts = read.unconfirmed(written.confirmed());
    if (!read.readable()) {
      List<Remark> helpful = MachineForm.helpful(read.remarks(), sent.text("source"));
      return again(UNPROCESSABLE, entry(id, version, shown, helpful, List.of(), null));
    }
    if (!doubts.isEmpty()) {
      return again(UNPROCESSABLE, entry(id, version, shown, doubts, doubts, null));
    }
    try {
      if (id == null) {
        machines.add(actor, null, written, actor.units().style());
        return to("/bench?done=added");
      }
      machines.revise(actor, id, version == null ? -1 : version, written, actor.units().style());
      return to("/bench?done=changed");
    } catch (EntryRefused e) {
      return again(UNPROCESSABLE, entry(id, version, shown, e.remarks(), List.of(), null));
    } catch (EntryChanged e) {
      Machine now = machines.get(actor, id);
      MachineCard card = MachineCard.of(now, actor.units());
      Entry both = entry(id, now.version(), shown, List.of(), List.of(), card);
      return again(Response.Status.PRECONDITION_FAILED.getStatusCode(), both);
    }
  }

  private Response again(int status, Entry entry) {
    page.fail();
    return Response.status(status).entity(Templates.machine(entry)).build();
  }

  /** What stands in the form: what was typed and what was said to be meant. */
  private record Shown(Map<String, String> values, List<String> confirmed) {}

  private static Entry entry(
      UUID id,
      Integer version,
      Shown shown,
      List<Remark> remarks,
      List<Remark> doubts,
      MachineCard now) {
    Form form = MachineForm.of(shown.values()).remarks(remarks);
    Set<String> confirmed = new LinkedHashSet<>(shown.confirmed());
    doubts.forEach(doubt -> confirmed.add(doubt.field()));
    return new Entry(id, version, form, doubts, confirmed, now, UsualWavelength.all());
  }

  private static Integer version(SentForm sent) {
    String text = sent.text("version");
    return text != null && text.matches("\\d{1,9}") ? Integer.valueOf(text) : null;
  }

  private static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }
}
