package club.emberwell.exchange;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.desk.home.People;
import club.emberwell.member.Actor;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Doors;
import club.emberwell.member.door.NewMember;
import club.emberwell.quantity.NumberStyle;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The invented club itself: its people, how it stands open, and what machines they own. */
@ApplicationScoped
class ScenarioClub {
  private final Doors doors;
  private final Members members;
  private final Machines machines;
  private final ClubOptions club;
  private final People people;
  private final ScenarioCalendarRepository calendar;
  private final String password;
  private final String clubName;

  ScenarioClub(
      Doors doors,
      Members members,
      Machines machines,
      ClubOptions club,
      People people,
      ScenarioCalendarRepository calendar,
      @ConfigProperty(name = "emberwell.demo.password") String password,
      @ConfigProperty(name = "emberwell.demo.club-name") String clubName) {
    this.doors = doors;
    this.members = members;
    this.machines = machines;
    this.club = club;
    this.people = people;
    this.calendar = calendar;
    this.password = password;
    this.clubName = clubName;
  }

  /** Everybody by handle; adds who is missing. */
  Map<String, Actor> people(ScenarioFiles files, ScenarioGuise guise) {
    Map<String, Actor> found = new HashMap<>();
    for (ScenarioFiles.Person person : files.members()) {
      found.put(person.handle(), person(person, guise));
    }
    return found;
  }

  /** Opens the club at its first loading; what owners change afterwards stays. */
  void open() {
    if (!clubName.equals(club.clubName())) {
      club.clubName(clubName);
      club.door(ClubOptions.Door.OPEN);
      club.readingPublic(true);
    }
  }

  /** All machines by {@link #key}; adds what is missing. */
  Map<String, UUID> benches(ScenarioFiles files, Map<String, Actor> people) {
    Map<String, UUID> benches = new HashMap<>();
    for (ScenarioFiles.OwnedMachine owned : files.machines()) {
      benches.put(
          key(owned.owner(), owned.machine().name()), machine(people.get(owned.owner()), owned));
    }
    return benches;
  }

  static String key(String owner, String machine) {
    return owner + "/" + machine;
  }

  private Actor person(ScenarioFiles.Person person, ScenarioGuise guise) {
    return members
        .byHandle(person.handle())
        .map(MemberView::actor)
        .orElseGet(
            () -> {
              MemberView made =
                  guise.ownClub()
                      ? doors.enrol(
                          new NewMember(person.handle(), null, password),
                          Role.valueOf(person.role().toUpperCase(Locale.ROOT)))
                      : doors.enrolInvented(person.handle(), guise::joined);
              people.trustInvented(made.id());
              if (person.joined() != null) {
                calendar.joined(made.id(), person.joined());
              }
              return made.actor();
            });
  }

  private UUID machine(Actor owner, ScenarioFiles.OwnedMachine owned) {
    return machines.of(owner).stream()
        .filter(m -> m.name().equals(owned.machine().name()))
        .findFirst()
        .map(Machine::id)
        .orElseGet(
            () -> {
              UUID id = machines.add(owner, null, owned.machine(), NumberStyle.ANY).machine().id();
              calendar.described(id);
              return id;
            });
  }
}
