package club.emberwell.web.room;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.card.StandingLine;
import club.emberwell.laser.safety.Ventilation;
import club.emberwell.member.Role;
import club.emberwell.room.Room;
import club.emberwell.room.RoomPosting;
import club.emberwell.room.Rooms;
import club.emberwell.web.dose.Worked;
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
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** One's own rooms: their air, and what is checked there. */
@Path("/rooms")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class RoomPages extends Pages {
  private static final String LIST = "/rooms";
  private static final String PATH = LIST + "/";
  private static final String NEW = PATH + "new";

  private final Rooms rooms;
  private final Machines machines;

  RoomPages(Rooms rooms, Machines machines) {
    this.rooms = rooms;
    this.machines = machines;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance list(List<Card> rooms);

    static native TemplateInstance room(Card room);

    static native TemplateInstance write(Writing writing);

    static native TemplateInstance withdraw(Card room);
  }

  /**
   * A room as its owner sees it.
   *
   * @param machines names of those that stand in it
   * @param lines of one's own, before each job here
   */
  record Card(
      UUID id,
      int version,
      String name,
      List<String> machines,
      List<CheckLine> checks,
      Air air,
      List<String> lines,
      String notes) {
    /** What every card begins with, wherever the job is done. */
    public List<String> getStanding() {
      return Stream.of(StandingLine.values()).map(StandingLine::anywhere).toList();
    }

    public List<CheckLine> getDue() {
      return checks.stream().filter(CheckLine::due).toList();
    }

    public String getClosing() {
      return Ventilation.CLOSING;
    }
  }

  /** What is calculated of its air, and what further numbers would need. */
  record Air(List<Worked> worked, List<String> missing) {}

  /**
   * The form in one state.
   *
   * @param action where it is sent to
   * @param back where Cancel leads
   */
  record Writing(String action, Form form, String back) {
    private static final String CHECKS = "checks.";

    /** The fields of all checks, in order. */
    public List<Field> getChecks() {
      return form.getFields().stream().filter(f -> f.getName().startsWith(CHECKS)).toList();
    }

    /** What has something to correct stands open. */
    public boolean isOpen() {
      return getChecks().stream().anyMatch(Field::isFailed);
    }
  }

  private Card card(Room room, List<Machine> own) {
    return new Card(
        room.id(),
        room.version(),
        room.name(),
        own.stream()
            .filter(machine -> room.values().machines().contains(machine.id()))
            .map(Machine::name)
            .toList(),
        room.values().checks().stream().map(CheckLine::of).toList(),
        new Air(AirWork.of(room.values(), actor().units()), AirWork.missing(room.values())),
        room.values().lines(),
        room.written().notes());
  }

  @GET
  public TemplateInstance list(@RestQuery String done) {
    say(done, "removed".equals(done) ? "Removed." : "Saved.");
    List<Machine> own = machines.of(actor());
    return Templates.list(rooms.of(actor()).stream().map(room -> card(room, own)).toList());
  }

  private Form blankForm() {
    return RoomForm.of(UUID.randomUUID(), machines.of(actor()));
  }

  @GET
  @Path("new")
  public TemplateInstance blank() {
    return shown(blankForm());
  }

  private static TemplateInstance shown(Form form) {
    return Templates.write(new Writing(NEW, form, LIST));
  }

  @POST
  @Path("new")
  public Response add(SentForm sent) {
    return take(sent, this::blankForm, RoomPages::shown)
        .store(
            s ->
                rooms.add(
                    actor(),
                    new RoomPosting(s.id("id"), RoomForm.written(s), actor().units().style())))
        .then(room -> PATH + room.id() + "?done=added");
  }

  @GET
  @Path("{id}")
  public TemplateInstance room(@RestPath UUID id, @RestQuery String done) {
    say(done, "Saved.");
    return Templates.room(card(rooms.get(actor(), id), machines.of(actor())));
  }

  @GET
  @Path("{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return editing(id, stored(id));
  }

  private Form stored(UUID id) {
    Room room = rooms.get(actor(), id);
    return RoomForm.filled(
        RoomForm.of(null, machines.of(actor())).changing("room", room.version(), PATH + id),
        room.written());
  }

  private static TemplateInstance editing(UUID id, Form form) {
    return Templates.write(new Writing(PATH + id + "/edit", form, PATH + id));
  }

  @POST
  @Path("{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> stored(id), form -> editing(id, form))
        .store(
            s ->
                rooms.revise(
                    actor(), id, s.version(), RoomForm.written(s), actor().units().style()))
        .then(PATH + id + "?done=changed");
  }

  /** Something was checked today. */
  @POST
  @Path("{id}/checks/{check}")
  public Response checked(@RestPath UUID id, @RestPath String check) {
    rooms.checked(actor(), id, check, null);
    return to(PATH + id + "?done=checked");
  }

  @GET
  @Path("{id}/withdraw")
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(card(rooms.get(actor(), id), List.of()));
  }

  @POST
  @Path("{id}/withdraw")
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    rooms.withdraw(actor(), id, version);
    return to(LIST + "?done=removed");
  }
}
