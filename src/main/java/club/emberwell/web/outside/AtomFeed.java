package club.emberwell.web.outside;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Entries as an Atom feed (RFC 4287), each with its licence (RFC 4946). */
final class AtomFeed {
  static final String TYPE = "application/atom+xml;charset=UTF-8";

  private static final String NAMESPACE = "http://www.w3.org/2005/Atom";
  private static final String ATOM = "application/atom+xml";
  private static final String HTML = "text/html";

  private final Xml xml = new Xml();
  private final UnaryOperator<String> absolute;

  private AtomFeed(UnaryOperator<String> absolute) {
    this.absolute = absolute;
  }

  /**
   * What stands above the entries.
   *
   * @param id an absolute IRI that never changes
   * @param self path of the feed
   * @param alternate path of the page that shows the same
   * @param since when it was begun
   */
  record Head(String id, String title, String self, String alternate, Instant since) {}

  /**
   * Whose feed it is.
   *
   * @param rights under which terms its entries are shared
   */
  record Publisher(String name, String rights) {}

  /**
   * The document.
   *
   * @param items newest first
   * @param absolute makes an address of a path of this server
   */
  static byte[] of(
      Head head, Publisher publisher, List<FeedItem> items, UnaryOperator<String> absolute) {
    return new AtomFeed(absolute).write(head, publisher, items);
  }

  /** When the last of it was written or changed. */
  static Instant updated(Head head, List<FeedItem> items) {
    return Stream.concat(Stream.of(head.since()), items.stream().map(FeedItem::updated))
        .max(Instant::compareTo)
        .orElseThrow();
  }

  private byte[] write(Head head, Publisher publisher, List<FeedItem> items) {
    xml.open("feed", NAMESPACE).attribute("xml:lang", "en");
    xml.text("id", head.id());
    xml.text("title", head.title() + " · " + publisher.name());
    xml.text("updated", time(updated(head, items)));
    link("self", head.self(), ATOM);
    link("alternate", head.alternate(), HTML);
    author(publisher.name(), "/about");
    xml.text("rights", publisher.rights());
    xml.text("icon", absolute.apply("/favicon.ico"));
    xml.text("generator", "Emberwell");
    items.forEach(this::entry);
    return xml.close().bytes();
  }

  private void entry(FeedItem item) {
    xml.open("entry");
    xml.text("id", "urn:uuid:" + item.ref().id());
    xml.text("title", item.title());
    xml.text("published", time(item.published()));
    xml.text("updated", time(item.updated()));
    link("alternate", item.path(), HTML);
    author(item.author(), null);
    if (item.licence() != null) {
      xml.text("rights", item.licence().title());
      xml.empty("link").attribute("rel", "license").attribute("href", item.licence().url());
    }
    xml.empty("category")
        .attribute("term", item.ref().kind().code())
        .attribute("label", item.kind());
    xml.open("content").attribute("type", "html").characters(item.html()).close();
    xml.close();
  }

  private void author(String name, String path) {
    xml.open("author").text("name", name);
    if (path != null) {
      xml.text("uri", absolute.apply(path));
    }
    xml.close();
  }

  private void link(String rel, String path, String type) {
    xml.empty("link")
        .attribute("rel", rel)
        .attribute("type", type)
        .attribute("href", absolute.apply(path));
  }

  private static String time(Instant when) {
    return when.truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
