package club.emberwell.api.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Etags;
import club.emberwell.access.Problems;
import club.emberwell.api.writes.KeyedWrites;
import club.emberwell.listing.Slice;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.TalkService.Posted;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/** What questions, answers and notices have in common over HTTP. */
@RequestScoped
class TalkRequests {
  private final TalkService talk;
  private final TalkFinder finder;
  private final CurrentActor actor;
  private final KeyedWrites writes;
  private final RoutingContext request;

  TalkRequests(
      TalkService talk,
      TalkFinder finder,
      CurrentActor actor,
      KeyedWrites writes,
      RoutingContext request) {
    this.talk = talk;
    this.finder = finder;
    this.actor = actor;
    this.writes = writes;
    this.request = request;
  }

  /** A page of entries; {@code more} where another page follows. */
  record Listing(List<TalkJson> entries, int page, boolean more) {
    static Listing of(Slice<TalkEntry> page) {
      return new Listing(TalkJson.all(page.rows()), page.page(), page.more());
    }
  }

  /** Every version, newest first. */
  record History(List<TalkRevisionJson> revisions) {}

  Response post(TalkKind kind, TalkRequest sent) {
    return store(
        sent, () -> talk.post(actor.get(), kind, TalkPosting.of(sent.id(), sent.written())));
  }

  Response answer(UUID question, TalkRequest sent) {
    return store(
        sent, () -> talk.answer(actor.get(), question, TalkPosting.of(sent.id(), sent.written())));
  }

  private Response store(TalkRequest sent, Supplier<Posted> write) {
    AtomicReference<TalkEntry> made = new AtomicReference<>();
    Response response =
        writes.once(
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

  TalkEntry entry(TalkKind kind, UUID id) {
    TalkEntry entry = talk.get(actor.get(), id);
    if (entry.kind() != kind) {
      throw Problems.notFound().exception();
    }
    return entry;
  }

  Response get(TalkKind kind, UUID id) {
    return answer(Response.ok(), entry(kind, id));
  }

  Response revise(TalkKind kind, UUID id, TalkRequest sent) {
    entry(kind, id);
    TalkEntry revised = talk.revise(actor.get(), id, version(), sent.written(), sent.reason());
    finder.show(revised);
    return answer(Response.ok(), revised);
  }

  void withdraw(TalkKind kind, UUID id) {
    TalkEntry entry = entry(kind, id);
    boolean conditional = request.request().getHeader(HttpHeaders.IF_MATCH) != null;
    talk.withdraw(actor.get(), id, conditional ? version() : null);
    finder.show(entry);
  }

  History history(TalkKind kind, UUID id) {
    entry(kind, id);
    return new History(TalkRevisionJson.all(talk.history(actor.get(), id)));
  }

  Listing list(TalkKind kind, String text, boolean unanswered, int page) {
    return Listing.of(
        text == null || text.isBlank()
            ? talk.latest(kind, unanswered, page)
            : finder.find(kind, text, unanswered, page));
  }

  /** The version in If-Match. */
  int version() {
    return Math.toIntExact(Math.min(Etags.required(request), Integer.MAX_VALUE));
  }

  Response answer(Response.ResponseBuilder response, TalkEntry entry) {
    return response
        .header(HttpHeaders.ETAG, Etags.of(entry.version()))
        .entity(TalkJson.of(entry))
        .build();
  }
}
