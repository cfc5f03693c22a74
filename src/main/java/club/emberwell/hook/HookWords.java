package club.emberwell.hook;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryKind;
import club.emberwell.hook.ChangeNewsRepository.About;
import club.emberwell.hook.ChangeNewsRepository.News;
import club.emberwell.quantity.UtcTime;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * What a delivery says: {@code {type, timestamp, data}}. Of an entry that everybody may read, its
 * name and where it is; of what is for moderators, what waits and where, and nothing of what is in
 * it.
 */
@ApplicationScoped
class HookWords {
  private final String server;

  HookWords(@ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.server = publicUrl;
  }

  /** A delivery of something that happened. */
  DeliveryRepository.New delivery(UUID webhook, News news, String body) {
    return new DeliveryRepository.New(
        UUID.randomUUID(),
        webhook,
        news.event().code(),
        news.seq(),
        news.entry(),
        news.event().shows(),
        body);
  }

  /** A delivery that an owner asked for. */
  DeliveryRepository.New test(UUID webhook, Instant now) {
    Map<String, Object> data = new LinkedHashMap<>();
    data.put("id", webhook);
    data.put("kind", "webhook");
    data.put("title", "A test: this webhook works.");
    data.put("url", server + "/desk/club/webhooks/" + webhook);
    return new DeliveryRepository.New(
        UUID.randomUUID(),
        webhook,
        HookEvent.TEST.code(),
        null,
        null,
        false,
        said(HookEvent.TEST, now, data));
  }

  /** The body to the letter. */
  String body(News news) {
    Map<String, Object> data = new LinkedHashMap<>();
    if (news.event().ofTheDesk()) {
      atDesk(data, news);
    } else {
      EntryKind kind = news.kind();
      data.put("id", news.item());
      data.put("kind", kind.code());
      if (news.event().shows()) {
        data.put("title", news.about().title());
        data.put("url", server + kind.path(news.item(), news.about().parent()));
      }
      data.put("api", server + "/api/v1/" + kind.code() + "s/" + news.item());
    }
    return said(news.event(), news.at(), data);
  }

  private void atDesk(Map<String, Object> data, News news) {
    About about = news.about();
    data.put("id", news.item());
    switch (news.event()) {
      case DESK_WAITING -> put(data, about, said(about) + " waits for approval.");
      case DESK_FLAGGED ->
          put(data, about, said(about) + " was flagged: " + news.reason().label() + ".");
      case DESK_NOTED -> put(data, about, said(about) + " was noticed by a rule.");
      case DESK_WORD -> put(data, "word", "A new word waits.", "/desk/words/" + news.item());
      case DESK_PROPOSED ->
          put(data, "caution-proposal", "A caution text was proposed.", "/desk/cautions");
      case DESK_REQUESTED -> put(data, "request", "Somebody asks to join.", "/desk/requests");
      default -> throw new IllegalStateException("not of the desk: " + news.event());
    }
  }

  private static String said(About about) {
    String kind = about.ref().kind().label().toLowerCase(Locale.ROOT);
    return (kind.startsWith("a") ? "An " : "A ") + kind;
  }

  private void put(Map<String, Object> data, About about, String title) {
    String kind = about.ref().kind().code();
    put(data, kind, title, "/desk/items/" + kind + "/" + about.ref().id());
  }

  private void put(Map<String, Object> data, String kind, String title, String path) {
    data.put("kind", kind);
    data.put("title", title);
    data.put("url", server + path);
  }

  private static String said(HookEvent event, Instant at, Map<String, Object> data) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("type", event.code());
    body.put("timestamp", UtcTime.of(at));
    body.put("data", data);
    return StoredJson.write(body);
  }
}
