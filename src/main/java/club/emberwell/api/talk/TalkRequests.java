package club.emberwell.api.talk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Slice;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.TalkService.Posted;
import club.emberwell.talk.TieCautions;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;

/** What questions, answers, notices and comments have in common over HTTP. */
@RequestScoped
class TalkRequests {
  private final TalkService talk;
  private final TalkFinder finder;
  private final ShownPhotos photos;
  private final CatalogService catalog;
  static final String SORTS =
      "sort=newest (as it is without), or sort=best: the closest to the words first, of which there"
          + " is one page only.";
  private static final String BEST = "best";
  private static final String NEWEST = "newest";

  private final ApiRequest request;

  TalkRequests(
      TalkService talk,
      TalkFinder finder,
      ShownPhotos photos,
      CatalogService catalog,
      ApiRequest request) {
    this.talk = talk;
    this.finder = finder;
    this.photos = photos;
    this.catalog = catalog;
    this.request = request;
  }

  Response post(EntryKind kind, TalkRequest sent) {
    return store(
        sent, () -> talk.post(request.actor(), kind, TalkPosting.of(sent.id(), sent.written())));
  }

  Response answer(UUID question, TalkRequest sent) {
    return store(
        sent,
        () -> talk.answer(request.actor(), question, TalkPosting.of(sent.id(), sent.written())));
  }

  Response comment(UUID report, TalkRequest sent) {
    return store(
        sent,
        () -> talk.comment(request.actor(), report, TalkPosting.of(sent.id(), sent.written())));
  }

  private Response store(TalkRequest sent, Supplier<Posted> write) {
    AtomicReference<TalkEntry> made = new AtomicReference<>();
    Response response =
        request.once(
            sent,
            () -> {
              TalkEntry entry = write.get().entry();
              made.set(entry);
              return answer(Response.created(URI.create(path(entry))), entry);
            });
    if (made.get() != null) {
      finder.show(made.get());
    }
    return response;
  }

  private static String path(TalkEntry entry) {
    return "/api/v1/" + entry.kind().code() + "s/" + entry.id();
  }

  TalkEntry entry(EntryKind kind, UUID id) {
    TalkEntry entry = talk.get(request.actor(), id);
    if (entry.kind() != kind) {
      throw Problems.notFound().exception();
    }
    return entry;
  }

  Response get(EntryKind kind, UUID id) {
    return answer(Response.ok(), entry(kind, id));
  }

  Response revise(EntryKind kind, UUID id, TalkRequest sent) {
    entry(kind, id);
    TalkEntry revised =
        talk.revise(request.actor(), id, request.version(), sent.written(), sent.reason());
    finder.show(revised);
    return answer(Response.ok(), revised);
  }

  void withdraw(EntryKind kind, UUID id) {
    TalkEntry entry = entry(kind, id);
    talk.withdraw(request.actor(), id, request.versionIfGiven());
    finder.show(entry);
  }

  ListJson<TalkRevisionJson> history(EntryKind kind, UUID id) {
    entry(kind, id);
    return ListJson.of(TalkRevisionJson.all(talk.history(request.actor(), id)));
  }

  /**
   * Which are wanted.
   *
   * @param text words that must be there, or null
   * @param sort {@code newest}, {@code best} or null
   */
  record Wanted(String text, String sort, boolean unanswered) {}

  ListJson<TalkJson> list(EntryKind kind, Wanted wanted, ListQuery list) {
    boolean best = BEST.equals(wanted.sort);
    if (!best && wanted.sort != null && !NEWEST.equals(wanted.sort)) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/sort", "Sort by newest or best.")
          .exception();
    }
    Slice<TalkEntry> found =
        finder.find(kind, wanted.text, wanted.unanswered, best ? list.first() : list.part());
    // what is best changes with every text that is added, so there is no place to go on from
    return ListJson.of(best ? new Slice<>(found.rows(), 0, null) : found, shown(found.rows()));
  }

  /** How some entries are answered: one statement for the photos of all. */
  Function<TalkEntry, TalkJson> shown(Collection<TalkEntry> entries) {
    Map<UUID, List<Photo>> found =
        photos.of(entries.stream().filter(TalkRequests::pictured).map(TalkEntry::id).toList());
    return entry ->
        TalkJson.of(
            entry,
            pictured(entry) ? found.getOrDefault(entry.id(), List.of()) : null,
            TieCautions.of(entry.written().ties(), catalog.cautions())
                .map(CautionMark::codes)
                .orElse(null));
  }

  private static boolean pictured(TalkEntry entry) {
    return EntryKind.PICTURED.contains(entry.kind());
  }

  Response answer(Response.ResponseBuilder response, TalkEntry entry) {
    return ApiRequest.answer(response, entry.version(), shown(List.of(entry)).apply(entry));
  }
}
