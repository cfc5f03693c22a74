package club.emberwell.exchange;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.desk.People;
import club.emberwell.member.Accounts;
import club.emberwell.member.Accounts.NewMember;
import club.emberwell.member.Actor;
import club.emberwell.member.ClubSettings;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Outcome;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.Origin;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportService;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Fills a club with an invented scenario through the same checks as everybody's posts. Loading
 * again adds what is missing and changes nothing else, so it may be broken off at any moment.
 */
@ApplicationScoped
public class ScenarioLoader {
  private static final Logger LOG = Logger.getLogger(ScenarioLoader.class);
  private static final int PROGRESS_EVERY = 250;
  private static final int SECONDS_APART = 20;

  private final Accounts accounts;
  private final Members members;
  private final Machines machines;
  private final ReportService reports;
  private final ScenarioTalk talk;
  private final ClubSettings club;
  private final People people;
  private final String password;
  private final String clubName;

  ScenarioLoader(
      Accounts accounts,
      Members members,
      Machines machines,
      ReportService reports,
      ScenarioTalk talk,
      ClubSettings club,
      People people,
      @ConfigProperty(name = "emberwell.demo.password") String password,
      @ConfigProperty(name = "emberwell.demo.club-name") String clubName) {
    this.accounts = accounts;
    this.members = members;
    this.machines = machines;
    this.reports = reports;
    this.talk = talk;
    this.club = club;
    this.people = people;
    this.password = password;
    this.clubName = clubName;
  }

  /** How a loading went. */
  public record Loaded(int stored, int refused, int refusedAgainstExpectation, int letIn) {
    /** Whether the checks did exactly what the scenario expects of them. */
    public boolean asExpected() {
      return refusedAgainstExpectation == 0 && letIn == 0;
    }
  }

  /**
   * Loads a scenario.
   *
   * @param folder on the class path
   * @throws IllegalArgumentException where there is none
   */
  public Loaded load(String folder) {
    ScenarioFiles files = new ScenarioFiles(folder);
    Map<String, Actor> people = new HashMap<>();
    for (ScenarioFiles.Person person : files.members()) {
      people.put(person.handle(), person(person));
    }
    if (!clubName.equals(club.clubName())) {
      club.clubName(clubName);
      club.door(ClubSettings.Door.OPEN);
      club.readingPublic(true);
    }
    Map<String, UUID> benches = new HashMap<>();
    for (ScenarioFiles.OwnedMachine owned : files.machines()) {
      benches.put(key(owned.owner(), owned.machine().name()), machine(people, owned));
    }
    Loaded loaded = post(files.reports(), people, benches);
    LOG.infof("scenario: %d entries of talk were added", talk.load(files.talk(), people));
    return loaded;
  }

  private Actor person(ScenarioFiles.Person person) {
    return members
        .byHandle(person.handle())
        .map(MemberView::actor)
        .orElseGet(
            () -> {
              Role role = Role.valueOf(person.role().toUpperCase(Locale.ROOT));
              Outcome<MemberView> outcome =
                  accounts.enrol(new NewMember(person.handle(), null, password), role);
              if (outcome instanceof Outcome.Done<MemberView> done) {
                people.trustInvented(done.value().id());
                return done.value().actor();
              }
              throw new IllegalStateException(person.handle() + ": " + outcome);
            });
  }

  private UUID machine(Map<String, Actor> people, ScenarioFiles.OwnedMachine owned) {
    Actor owner = people.get(owned.owner());
    return machines.of(owner).stream()
        .filter(m -> m.name().equals(owned.machine().name()))
        .findFirst()
        .map(Machine::id)
        .orElseGet(
            () -> machines.add(owner, null, owned.machine(), NumberStyle.ANY).machine().id());
  }

  private Loaded post(
      List<ScenarioReport> all, Map<String, Actor> people, Map<String, UUID> benches) {
    int stored = 0;
    int refused = 0;
    int wrongly = 0;
    int letIn = 0;
    for (ScenarioReport report : all) {
      Actor author = people.get(report.by());
      Instant at =
          report
              .at()
              .atTime(9, 0)
              .toInstant(ZoneOffset.UTC)
              .plusSeconds((long) SECONDS_APART * stored % 36_000);
      try {
        UUID machine = benches.get(key(report.by(), report.machine()));
        reports.post(
            author,
            new Posting(
                report.id(), report.written(machine), NumberStyle.ANY, Origin.HERE, at, false));
        if (report.withdrawn() != null) {
          reports.withdraw(author, report.id(), null);
        }
        letIn += report.mustBeRefused() ? 1 : 0;
        if (++stored % PROGRESS_EVERY == 0) {
          LOG.infof("scenario: %d of %d reports", stored, all.size());
        }
      } catch (EntryRefused | ProhibitedWork e) {
        refused++;
        if (!report.mustBeRefused()) {
          wrongly++;
          LOG.warnf("scenario: %s by %s was refused: %s", report.id(), report.by(), why(e));
        }
      }
    }
    LOG.infof(
        "scenario: %d reports are there, %d were refused as they should be",
        stored, refused - wrongly);
    return new Loaded(stored, refused, wrongly, letIn);
  }

  private static String why(RuntimeException e) {
    return e instanceof EntryRefused refused ? refused.remarks().toString() : e.getMessage();
  }

  private static String key(String owner, String machine) {
    return owner + "/" + machine;
  }
}
