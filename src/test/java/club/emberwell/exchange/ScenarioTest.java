package club.emberwell.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.Machines;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.Origin;
import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.listing.Part;
import club.emberwell.lot.order.Ordering;
import club.emberwell.lot.order.WrittenOrder;
import club.emberwell.lot.order.WrittenOrder.Basis;
import club.emberwell.lot.order.WrittenOrder.Needed;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.sample.Sample;
import club.emberwell.sample.Samples;
import club.emberwell.sample.WrittenSample;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.WrittenTalk;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ScenarioTest {
  private static final ScenarioFiles FILES =
      new ScenarioFiles("seed-scenario", ScenarioGuise.OWN_CLUB);
  private static final Basis LOTS = new Basis("tidewater blanks", null, null, null);

  @Inject ScenarioTalk scenario;
  @Inject ScenarioStock stock;
  @Inject ScenarioPictures pictures;
  @Inject ScenarioFlags flags;
  @Inject Flags raisedFlags;
  @Inject ShownPhotos photos;
  @Inject GridService grids;
  @Inject Samples samples;
  @Inject Ordering ordering;
  @Inject TalkService talk;
  @Inject TalkFinder finder;
  @Inject ReportService reports;
  @Inject Machines machines;
  @Inject EntityManager db;

  @Test
  void everyEntryOfTheInventedClubPassesTheChecksOnceAndIsFound() {
    Map<String, Actor> people = new HashMap<>();
    FILES.members().forEach(person -> people.put(person.handle(), enrolled()));
    List<ScenarioTalkLine> lines = FILES.talk();
    lines.stream()
        .filter(line -> line.said().ties() != null && line.said().ties().report() != null)
        .forEach(line -> post(line.said().ties().report(), people));
    assertEquals(lines.size(), scenario.load(lines, people, Origin.HERE));
    for (ScenarioTalkLine line : lines) {
      TalkEntry entry = talk.get(people.get(line.by()), line.id());
      assertTrue(entry.isLive());
      assertEquals(line.at(), entry.createdAt());
      isOfTheScenariosTime(entry, lines);
      assertFalse(entry.html().getMarkup().isBlank());
      if (line.accepted()) {
        assertEquals(line.id(), talk.get(people.get(line.by()), line.question()).accepted());
      }
    }
    editsStay(lines.get(0), people);
    finder.show(talk.get(people.get("emberfox"), question(lines, "Navy")));
    SearchQuery coated =
        SearchQuery.everything()
            .withFacet("material", List.of("stainless-steel"))
            .withFacet("coating", List.of("powder-coat"));
    assertTrue(finder.about(coated).stream().anyMatch(e -> e.written().title().startsWith("Navy")));
  }

  @Test
  void membersKeepGridsSamplesAndLotsOnce() {
    Map<String, Actor> people = new HashMap<>();
    Map<String, UUID> benches = new HashMap<>();
    List<ScenarioStockLine> lines = FILES.stock();
    lines.forEach(line -> people.computeIfAbsent(line.by(), by -> enrolled()));
    assertTrue(people.size() >= 20 && people.containsKey("fernhollow"), people.toString());
    FILES.machines().stream()
        .filter(owned -> people.containsKey(owned.owner()))
        .forEach(owned -> benches.put(key(owned), added(owned, people)));
    lines.stream()
        .flatMap(l -> Stream.of(l.report(), l.sample() == null ? null : l.sample().report()))
        .filter(Objects::nonNull)
        .distinct()
        .forEach(report -> post(report, people));
    assertEquals(lines.size(), stock.load(lines, people, benches));
    assertEquals(0, stock.load(lines, people, benches));
    Actor fern = people.get("fernhollow");
    List<Grid> planned = grids.mine(fern, Part.FIRST).rows();
    assertEquals(2, planned.size());
    assertEquals(List.of(true, false), planned.stream().map(g -> g.report() == null).toList());
    Sample sample = samples.mine(fern, "window sill", Part.FIRST).rows().get(0);
    samples.revise(
        fern,
        sample.id(),
        sample.version(),
        new WrittenSample(null, null, "Given away", null, null, null));
    assertEquals(0, stock.load(lines, people, benches), "what somebody changed stays");
    assertTrue(
        ordering
                .order(fern, new WrittenOrder(List.of(new Needed("navy", 24)), 1, null, LOTS))
                .total()
            > 24);
  }

  @Test
  void aPictureIsDrawnOnceCommentsAreSaidOnceAndAFlagStandsAtItsTime() {
    Map<String, Actor> people = new HashMap<>();
    FILES.members().forEach(person -> people.put(person.handle(), enrolled()));
    Set<UUID> posted = reportsOfOtherTests();
    ScenarioReport shown =
        FILES.reports().stream()
            .filter(r -> r.fate().picture() != null && !posted.contains(r.id()))
            .findFirst()
            .orElseThrow();
    ScenarioComment said =
        FILES.comments().stream()
            .filter(c -> !posted.contains(c.report()))
            .findFirst()
            .orElseThrow();
    ScenarioFlag raised = FILES.flags().get(0);
    Stream.of(shown.id(), said.report(), raised.entry())
        .distinct()
        .forEach(report -> post(report, people));
    Actor author = people.get(shown.by());
    for (int loading = 0; loading < 2; loading++) {
      ScenarioPictures.Album album = pictures.album(FILES.looks(), List.of(shown.id()));
      album.add(author, shown.id(), shown.at(), shown.fate().picture());
      assertEquals(loading == 0 ? 1 : 0, album.added());
      assertEquals(
          loading == 0 ? 1 : 0, scenario.comment(List.of(said), people, Origin.HERE), said.text());
      flags.load(List.of(raised), people);
    }
    List<Photo> all = photos.of(author, EntryKind.REPORT, shown.id());
    assertEquals(1, all.size());
    assertTrue(all.get(0).words().caption().startsWith("Drawn: "), all.get(0).words().caption());
    assertTrue(all.get(0).words().alt().startsWith("Drawn, invented: "), all.get(0).words().alt());
    TalkEntry comment = talk.get(people.get(said.by()), said.id());
    assertEquals(said.at(), comment.createdAt());
    Flag flag = raisedFlags.mine(people.get(raised.by()), Part.FIRST).rows().get(0);
    assertEquals(raised.at(), flag.createdAt());
  }

  /** Their ids are taken by others' reports here. */
  private static Set<UUID> reportsOfOtherTests() {
    return Stream.concat(
            FILES.stock().stream()
                .flatMap(
                    l -> Stream.of(l.report(), l.sample() == null ? null : l.sample().report())),
            FILES.talk().stream().map(l -> l.said().ties().report()))
        .filter(Objects::nonNull)
        .collect(Collectors.toSet());
  }

  @Test
  void everyCommentIsUnderAReportOfSomebodyBeforeIt() {
    Map<UUID, ScenarioReport> all =
        FILES.reports().stream().collect(Collectors.toMap(ScenarioReport::id, r -> r));
    FILES
        .comments()
        .forEach(
            said -> {
              ScenarioReport about = all.get(said.report());
              assertTrue(about != null && about.at().isBefore(said.at()), said.toString());
            });
    assertTrue(FILES.comments().size() >= 150);
  }

  private static String key(ScenarioFiles.OwnedMachine owned) {
    return ScenarioClub.key(owned.owner(), owned.machine().name());
  }

  private UUID added(ScenarioFiles.OwnedMachine owned, Map<String, Actor> people) {
    return machines
        .add(people.get(owned.owner()), null, owned.machine(), NumberStyle.ANY)
        .machine()
        .id();
  }

  /** Nothing in it happened when it was loaded. */
  private static void isOfTheScenariosTime(TalkEntry entry, List<ScenarioTalkLine> lines) {
    List<Instant> answered =
        lines.stream()
            .filter(line -> entry.id().equals(line.question()))
            .map(ScenarioTalkLine::at)
            .sorted()
            .toList();
    Instant last = answered.isEmpty() ? entry.createdAt() : answered.get(answered.size() - 1);
    assertEquals(last, entry.activeAt());
    assertFalse(entry.updatedAt().isAfter(last), "accepted when the answer came");
  }

  /** A second start leaves alone what a visitor of the demo changed. */
  private void editsStay(ScenarioTalkLine line, Map<String, Actor> people) {
    Actor author = people.get(line.by());
    TalkEntry entry = talk.get(author, line.id());
    WrittenTalk other =
        new WrittenTalk(entry.written().title(), "Changed since.", entry.written().ties());
    talk.revise(author, line.id(), entry.version(), other, null);
    assertEquals(0, scenario.load(FILES.talk(), people, Origin.HERE));
    assertEquals("Changed since.", talk.get(author, line.id()).written().text());
  }

  private static UUID question(List<ScenarioTalkLine> lines, String title) {
    return lines.stream()
        .filter(line -> line.kind().equals(EntryKind.QUESTION.code()))
        .filter(line -> line.said().title().startsWith(title))
        .findFirst()
        .orElseThrow()
        .id();
  }

  private Actor enrolled() {
    UUID id = UUID.randomUUID();
    String handle = "s" + id.toString().substring(0, 13);
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "insert into member (id, handle, role, status)"
                            + " values (:id, :handle, 'member', 'active')")
                    .setParameter("id", id)
                    .setParameter("handle", handle)
                    .executeUpdate());
    return new Actor(id, handle, Role.MEMBER, UnitPreferences.metric());
  }

  private void post(UUID id, Map<String, Actor> people) {
    ScenarioReport report =
        FILES.reports().stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
    Actor author = people.get(report.by());
    ScenarioFiles.OwnedMachine owned =
        FILES.machines().stream()
            .filter(
                m -> m.owner().equals(report.by()) && m.machine().name().equals(report.machine()))
            .findFirst()
            .orElseThrow();
    UUID machine = machines.add(author, null, owned.machine(), NumberStyle.ANY).machine().id();
    reports.post(
        author,
        new Posting(
            id,
            report.written(machine).repeating(null),
            NumberStyle.ANY,
            Origin.HERE,
            report.at(),
            false));
  }
}
