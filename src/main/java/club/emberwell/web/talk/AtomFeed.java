package club.emberwell.web.talk;

import club.emberwell.talk.watch.Feed;
import club.emberwell.talk.watch.Find;
import java.io.StringWriter;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import java.util.function.UnaryOperator;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** What a watch found as an Atom feed (RFC 4287). */
final class AtomFeed {
  static final String TYPE = "application/atom+xml;charset=UTF-8";

  private static final String NAMESPACE = "http://www.w3.org/2005/Atom";
  private static final XMLOutputFactory WRITERS = XMLOutputFactory.newFactory();

  private final XMLStreamWriter xml;
  private final UnaryOperator<String> absolute;

  private AtomFeed(XMLStreamWriter xml, UnaryOperator<String> absolute) {
    this.xml = xml;
    this.absolute = absolute;
  }

  /**
   * The document.
   *
   * @param self path of the feed
   * @param absolute makes an address of a path of this server
   */
  static String of(Feed feed, String club, String self, UnaryOperator<String> absolute) {
    StringWriter out = new StringWriter();
    try {
      new AtomFeed(WRITERS.createXMLStreamWriter(out), absolute).write(feed, club, self);
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
    return out.toString();
  }

  private void write(Feed feed, String club, String self) throws XMLStreamException {
    xml.writeStartDocument("UTF-8", "1.0");
    xml.writeStartElement("feed");
    xml.writeDefaultNamespace(NAMESPACE);
    xml.writeAttribute("xml:lang", "en");
    text("id", urn(feed.watchId()));
    text("title", feed.label() + " · " + club);
    text("updated", time(feed.updated()));
    link("self", self, "application/atom+xml");
    link("alternate", feed.query().isEmpty() ? "/" : "/?" + feed.query(), "text/html");
    author(club);
    for (Find find : feed.finds()) {
      entry(find);
    }
    xml.writeEndElement();
    xml.writeEndDocument();
  }

  private void entry(Find find) throws XMLStreamException {
    xml.writeStartElement("entry");
    text("id", urn(find.entryId()));
    text("title", find.title());
    text("updated", time(find.foundAt()));
    link("alternate", find.path(), "text/html");
    author(find.by());
    xml.writeEmptyElement("category");
    xml.writeAttribute("term", find.entity());
    xml.writeAttribute("label", find.kind());
    text("summary", find.kind() + " by " + find.by());
    xml.writeEndElement();
  }

  private void author(String name) throws XMLStreamException {
    xml.writeStartElement("author");
    text("name", name);
    xml.writeEndElement();
  }

  private void link(String rel, String path, String type) throws XMLStreamException {
    xml.writeEmptyElement("link");
    xml.writeAttribute("rel", rel);
    xml.writeAttribute("type", type);
    xml.writeAttribute("href", absolute.apply(path));
  }

  private void text(String element, String text) throws XMLStreamException {
    xml.writeStartElement(element);
    xml.writeCharacters(text);
    xml.writeEndElement();
  }

  private static String urn(UUID id) {
    return "urn:uuid:" + id;
  }

  private static String time(Instant when) {
    return when.truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
