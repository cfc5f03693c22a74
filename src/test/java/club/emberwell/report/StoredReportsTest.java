package club.emberwell.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.Deed;
import club.emberwell.catalog.store.TermCare;
import club.emberwell.catalog.store.Unfiled;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Gone;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.reading.Entries;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class StoredReportsTest {
  @Inject ReportService reports;
  @Inject OwnReports own;
  @Inject EntryLife life;
  @Inject ReportRereading rereading;
  @Inject ReportSource source;
  @Inject ChangeLog changes;
  @Inject CatalogService catalog;
  @Inject TermCare terms;
  @Inject EntityManager db;

  private Actor ada;
  private Actor moderator;

  @BeforeEach
  void people() {
    ada = member(Role.MEMBER);
    moderator = member(Role.MODERATOR);
  }

  private Actor member(Role role) {
    UUID id = UUID.randomUUID();
    String handle = "m" + id.toString().substring(0, 13);
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "insert into member (id, handle, role, status)"
                            + " values (:id, :handle, :role, 'active')")
                    .setParameter("id", id)
                    .setParameter("handle", handle)
                    .setParameter("role", role.name().toLowerCase(java.util.Locale.ROOT))
                    .executeUpdate());
    return new Actor(id, handle, role, UnitPreferences.metric());
  }

  private static EntryRef ref(UUID report) {
    return new EntryRef(EntryKind.REPORT, report);
  }

  private StoredReport post(WrittenReport written) {
    return reports.post(ada, Posting.ofApi(null, written));
  }

  @Test
  void aBatchTakesTwoStatementsWhateverItsSize() {
    List<UUID> ids = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      ids.add(post(Entries.grid(2, 2, t -> t)).snapshot().id());
    }
    for (int size : new int[] {1, 12}) {
      assertEquals(2, statements(() -> source.byIds(ids.subList(0, size))));
    }
    long before = post(Entries.report()).snapshot().number() - 1;
    assertEquals(2, statements(() -> source.liveAfter(before, 100)));
  }

  @Test
  void whatDidNotChangeIsNotReadAgainAndWhatDidIs() {
    UUID id = post(Entries.grid(2, 2, t -> t)).snapshot().id();
    assertEquals(source.byIds(List.of(id)), source.shown(List.of(id)));
    assertEquals(1, statements(() -> source.shown(List.of(id))));
    List<String> changes =
        List.of(
            "update entry set state = 'held', version = version + 1 where id = :id",
            "update report set lot = 'lot 7' where id = :id",
            "update trial set quality = 3 where report_id = :id and effect = 'right'",
            "update member set handle = handle || 'x'"
                + " where id = (select member_id from entry where id = :id)");
    for (String change : changes) {
      QuarkusTransaction.requiringNew()
          .run(() -> db.createNativeQuery(change).setParameter("id", id).executeUpdate());
      List<ReportSnapshot> now = source.byIds(List.of(id));
      assertEquals(now, source.shown(List.of(id)), change);
    }
    assertEquals("lot 7", source.shown(List.of(id)).get(0).work().text(WorkProperty.LOT));
    assertTrue(source.shown(List.of(UUID.randomUUID())).isEmpty());
  }

  private static int statements(Supplier<List<ReportSnapshot>> read) {
    return StatementCount.of(() -> assertTrue(!read.get().isEmpty())).size();
  }

  @Test
  void aPostedReportCostsALookAtItsAuthorTheFirstLookAndARowPerTable() {
    post(Entries.report());
    List<String> statements = StatementCount.of(() -> post(Entries.work("oak", null, null)));
    assertEquals(6, statements.size(), () -> String.join("\n", statements));
  }

  @Test
  void aSnapshotHoldsEverythingThatWasRead() {
    ReportSnapshot posted = post(Entries.grid(2, 3, t -> t)).snapshot();
    ReportSnapshot read = source.byIds(List.of(posted.id())).get(0);
    assertEquals(posted, read);
    assertEquals(6, read.trials().size());
    assertEquals(1, read.trials().get(5).row());
    assertEquals(2, read.trials().get(5).column());
    assertEquals(ada.handle(), read.author().handle());
    assertEquals(1.0, read.trials().get(0).derived().arealDose(), 1e-12);
  }

  @Test
  void onesOwnReportsAreListedInWhateverState() {
    UUID first = post(Entries.report()).snapshot().id();
    UUID second = post(Entries.work("oak", null, null)).snapshot().id();
    reports.withdraw(ada, first, null);
    assertEquals(
        List.of(second, first),
        own.of(ada, Part.FIRST).rows().stream().map(ReportSnapshot::id).toList());
  }

  @Test
  void theSameIdPostedFromManySidesAtOnceIsOneReport() {
    UUID id = UUID.randomUUID();
    List<UUID> answers =
        IntStream.range(0, 8)
            .parallel()
            .mapToObj(i -> reports.post(ada, Posting.ofApi(id, Entries.report())))
            .map(stored -> stored.snapshot().id())
            .toList();
    assertEquals(Collections.nCopies(8, id), answers);
    assertEquals(1, reports.history(ada, id).size());
  }

  @Test
  void everyWriteLeavesOneChangeRow() {
    UUID id = post(Entries.report()).snapshot().id();
    reports.revise(ada, id, 1, Posting.ofApi(null, Entries.work("oak", null, null)), null);
    reports.withdraw(ada, id, 2);
    // the rows themselves: the log waits for whatever else the server has open
    Object rows =
        db.createNativeQuery("select count(*) from change_row where entity_id = ?1")
            .setParameter(1, id)
            .getSingleResult();
    assertEquals(3, ((Number) rows).longValue());
  }

  @Test
  void aRefusedWriteLeavesNothing() {
    ChangeLog.Position start = changes.head().last().position();
    UUID id = UUID.randomUUID();
    assertThrows(
        EntryRefused.class,
        () -> reports.post(ada, Posting.ofApi(id, Entries.work(null, null, null))));
    assertThrows(
        ProhibitedWork.class,
        () -> reports.post(ada, Posting.ofApi(id, Entries.work("vinyl", null, null))));
    assertThrows(EntryUnknown.class, () -> reports.get(ada, id));
    assertTrue(changes.since(start, 100).stream().noneMatch(c -> c.id().equals(id)));
  }

  @Test
  void aPageIsAskedBeforeImplausibleValuesAreStored() {
    WrittenReport fast = Entries.with(Entries.settings("45 %", "9000 mm/s", "0.1 mm"));
    assertThrows(
        EntryUnconfirmed.class,
        () -> reports.post(ada, Posting.ofPage(null, fast, NumberStyle.ANY)));
    StoredReport stored =
        reports.post(
            ada,
            Posting.ofPage(null, fast.withConfirmed(List.of("/settings/speed")), NumberStyle.ANY));
    assertEquals(EntryState.LIVE, stored.snapshot().state());
  }

  @Test
  void aHeldReportIsSeenByItsAuthorAndModeratorsOnly() {
    UUID id = post(Entries.report()).snapshot().id();
    life.decide(moderator, ref(id), Decision.HOLD, "the photo shows something else");
    Actor stranger = member(Role.MEMBER);
    assertThrows(EntryUnknown.class, () -> reports.get(stranger, id));
    assertEquals(EntryState.HELD, reports.get(ada, id).snapshot().state());
    assertEquals("the photo shows something else", reports.history(ada, id).get(0).reason());
    life.decide(moderator, ref(id), Decision.RESTORE, "settled");
    assertEquals(EntryState.LIVE, reports.get(stranger, id).snapshot().state());
    life.decide(moderator, ref(id), Decision.REMOVE, "advertising");
    assertThrows(Gone.class, () -> reports.get(stranger, id));
  }

  @Test
  void nobodyDecidesWithoutReasonOrAboutTheirOwn() {
    UUID id = post(Entries.report()).snapshot().id();
    assertThrows(EntryRefused.class, () -> life.decide(moderator, ref(id), Decision.HOLD, " "));
    assertThrows(EntryForbidden.class, () -> life.decide(ada, ref(id), Decision.HOLD, "because"));
    UUID own = reports.post(moderator, Posting.ofApi(null, Entries.report())).snapshot().id();
    assertThrows(
        EntryForbidden.class, () -> life.decide(moderator, ref(own), Decision.REMOVE, "because"));
  }

  @Test
  void wordsThatAreFiledMeanwhileAreReadAgain() {
    UUID id = post(Entries.report()).snapshot().id();
    assertEquals(0, rereading.reinterpret(List.of(id)), "nothing changed");
    assertEquals(1, reports.get(ada, id).snapshot().version());
    // as if the word had not been in the list when the report was posted
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery("update report set material = null where id = :id")
                    .setParameter("id", id)
                    .executeUpdate());
    ChangeLog.Position start = changes.head().last().position();
    assertEquals(1, rereading.reinterpret(List.of(id)));
    StoredReport again = reports.get(ada, id);
    assertEquals("birch-plywood", again.snapshot().work().material().slug());
    assertEquals(EntryAction.READ_AGAIN, reports.history(ada, id).get(0).action());
    assertEquals(List.of(id), changes.since(start, 10).stream().map(ChangeLog.Change::id).toList());
  }

  @Test
  void catchingUpFindsTheReportsWhoseWordsMeanSomethingElseNow() {
    UUID id = post(Entries.report()).snapshot().id();
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              db.createNativeQuery("update report set material = 'oak' where id = :id")
                  .setParameter("id", id)
                  .executeUpdate();
              db.createNativeQuery("update report_reading set catalog_version = -1")
                  .executeUpdate();
            });
    assertTrue(rereading.catchUp(catalog.snapshot()) >= 1);
    assertEquals("birch-plywood", reports.get(ada, id).snapshot().work().material().slug());
    assertEquals(0, rereading.catchUp(catalog.snapshot()));
  }

  @Test
  void wordsThatMatchNothingWaitAndAreReadAgainOnceFiled() {
    String words = "zorblite veneer " + UUID.randomUUID().toString().substring(0, 8);
    UUID id = post(Entries.work(words, null, null)).snapshot().id();
    Unfiled waiting =
        IntStream.range(0, 50)
            .mapToObj(Part::page)
            .map(catalog::waiting)
            .flatMap(page -> page.rows().stream())
            .filter(u -> u.written().equals(words))
            .findFirst()
            .orElseThrow();
    terms.file(waiting.id(), "birch-plywood", new Deed(ada.memberId(), "a test"));
    rereading.catchUp(catalog.snapshot());
    StoredReport read = reports.get(ada, id);
    assertEquals("birch-plywood", read.snapshot().work().material().slug());
    assertEquals(words, read.snapshot().work().material().written());
    assertEquals(EntryAction.READ_AGAIN, reports.history(ada, id).get(0).action());
  }
}
