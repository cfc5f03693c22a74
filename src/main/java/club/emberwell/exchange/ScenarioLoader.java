package club.emberwell.exchange;

import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportService;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/**
 * Fills a club with an invented scenario through the same checks as everybody's posts. Loading
 * again adds what is missing and changes nothing else, so it may be broken off at any moment.
 */
@ApplicationScoped
public class ScenarioLoader {
  private static final Logger LOG = Logger.getLogger(ScenarioLoader.class);
  private static final int PROGRESS_EVERY = 250;

  /** Reports that share a transaction: waiting for the disk takes longer than storing one. */
  private static final int TOGETHER = 10;

  private final ScenarioClub club;
  private final ReportService reports;
  private final ScenarioTalk talk;
  private final ScenarioStock stock;
  private final ScenarioPictures pictures;
  private final ScenarioFlags flags;

  ScenarioLoader(
      ScenarioClub club,
      ReportService reports,
      ScenarioTalk talk,
      ScenarioStock stock,
      ScenarioPictures pictures,
      ScenarioFlags flags) {
    this.club = club;
    this.reports = reports;
    this.talk = talk;
    this.stock = stock;
    this.pictures = pictures;
    this.flags = flags;
  }

  /** How a loading went. */
  public record Loaded(int stored, int refused, int refusedAgainstExpectation, int letIn) {
    /** Whether the checks did exactly what the scenario expects of them. */
    public boolean asExpected() {
      return refusedAgainstExpectation == 0 && letIn == 0;
    }

    private Loaded plusStored(int more, int letInMore) {
      return new Loaded(stored + more, refused, refusedAgainstExpectation, letIn + letInMore);
    }

    private Loaded plusRefused(boolean expected) {
      return new Loaded(stored, refused + 1, refusedAgainstExpectation + (expected ? 0 : 1), letIn);
    }
  }

  /** Who posts, and from which machine. */
  private record Cast(
      Map<String, Actor> people,
      Map<String, UUID> benches,
      ScenarioGuise guise,
      ScenarioPictures.Album album) {
    Actor author(ScenarioReport report) {
      return people.get(report.by());
    }

    UUID machine(ScenarioReport report) {
      return benches.get(ScenarioClub.key(report.by(), report.machine()));
    }
  }

  /**
   * Loads a scenario.
   *
   * @param folder on the class path
   * @throws IllegalArgumentException where there is none
   */
  public Loaded load(String folder) {
    return load(folder, ScenarioGuise.OWN_CLUB);
  }

  /**
   * Loads a scenario in some guise.
   *
   * @param folder on the class path
   * @throws IllegalArgumentException where there is none
   */
  public Loaded load(String folder, ScenarioGuise guise) {
    ScenarioFiles files = new ScenarioFiles(folder, guise);
    Map<String, Actor> people = club.people(files, guise);
    if (guise.ownClub()) {
      club.open();
    }
    Map<String, UUID> benches = club.benches(files, people);
    List<ScenarioReport> all = files.reports();
    List<ScenarioTalkLine> said = files.talk();
    ScenarioPictures.Album album = pictures.album(files.looks(), pictured(all, said));
    Loaded loaded = post(all, new Cast(people, benches, guise, album));
    LOG.infof("scenario: %d entries of talk were added", talk.load(said, people, guise.origin()));
    said.forEach(line -> album.add(people.get(line.by()), line.id(), line.at(), line.picture()));
    LOG.infof("scenario: %d pictures were drawn", album.added());
    LOG.infof(
        "scenario: %d comments were added", talk.comment(files.comments(), people, guise.origin()));
    flags.load(files.flags(), people);
    LOG.infof(
        "scenario: %d grids, samples and lots were added",
        stock.load(files.stock(), people, benches));
    return loaded;
  }

  private static List<UUID> pictured(List<ScenarioReport> all, List<ScenarioTalkLine> said) {
    return Stream.concat(
            all.stream().filter(r -> r.fate().picture() != null).map(ScenarioReport::id),
            said.stream().filter(line -> line.picture() != null).map(ScenarioTalkLine::id))
        .toList();
  }

  private Loaded post(List<ScenarioReport> all, Cast cast) {
    Loaded loaded = new Loaded(0, 0, 0, 0);
    for (List<ScenarioReport> some : together(all)) {
      int before = loaded.stored();
      loaded = post(some, cast, loaded);
      some.forEach(
          one -> cast.album().add(cast.author(one), one.id(), one.at(), one.fate().picture()));
      if (loaded.stored() / PROGRESS_EVERY > before / PROGRESS_EVERY) {
        LOG.infof("scenario: %d of %d reports", loaded.stored(), all.size());
      }
      cast.guise().stored(loaded.stored() + loaded.refused(), all.size());
    }
    LOG.infof(
        "scenario: %d reports are there, %d were refused as they should be",
        loaded.stored(), loaded.refused() - loaded.refusedAgainstExpectation());
    return loaded;
  }

  /** Neighbours that should all be let in; one that should not stands alone. */
  private static List<List<ScenarioReport>> together(List<ScenarioReport> all) {
    List<List<ScenarioReport>> groups = new ArrayList<>();
    List<ScenarioReport> open = new ArrayList<>();
    for (ScenarioReport report : all) {
      if (open.size() == TOGETHER || report.mustBeRefused() && !open.isEmpty()) {
        groups.add(List.copyOf(open));
        open.clear();
      }
      open.add(report);
      if (report.mustBeRefused()) {
        groups.add(List.copyOf(open));
        open.clear();
      }
    }
    if (!open.isEmpty()) {
      groups.add(List.copyOf(open));
    }
    return groups;
  }

  /** Posts some in one transaction; if one of them is refused, each by itself. */
  private Loaded post(List<ScenarioReport> some, Cast cast, Loaded soFar) {
    try {
      QuarkusTransaction.requiringNew()
          .run(
              () -> {
                for (ScenarioReport report : some) {
                  post(report, cast);
                }
              });
      int letIn = (int) some.stream().filter(ScenarioReport::mustBeRefused).count();
      return soFar.plusStored(some.size(), letIn);
    } catch (EntryRefused | ProhibitedWork e) {
      if (some.size() > 1) {
        Loaded loaded = soFar;
        for (ScenarioReport report : some) {
          loaded = post(List.of(report), cast, loaded);
        }
        return loaded;
      }
      ScenarioReport report = some.get(0);
      if (!report.mustBeRefused()) {
        LOG.warnf("scenario: %s by %s was refused: %s", report.id(), report.by(), why(e));
      }
      return soFar.plusRefused(report.mustBeRefused());
    }
  }

  private void post(ScenarioReport report, Cast cast) {
    Actor author = cast.author(report);
    reports.post(
        author,
        new Posting(
            report.id(),
            report.written(cast.machine(report)),
            NumberStyle.ANY,
            cast.guise().origin(),
            report.at(),
            false));
    if (report.isTakenBack()) {
      reports.withdraw(author, report.id(), null);
    }
  }

  private static String why(RuntimeException e) {
    return e instanceof EntryRefused refused ? refused.remarks().toString() : e.getMessage();
  }
}
