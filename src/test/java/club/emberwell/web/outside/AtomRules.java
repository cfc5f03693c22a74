package club.emberwell.web.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * What RFC 4287 (The Atom Syndication Format, December 2005) wants of a feed and its entries; the
 * section stands beside each rule.
 */
public final class AtomRules {
  private static final String ATOM = "http://www.w3.org/2005/Atom";

  private AtomRules() {}

  public static void check(Element feed) {
    assertEquals("feed", feed.getLocalName(), "4.1.1");
    assertEquals(ATOM, feed.getNamespaceURI(), "2");
    head(feed, "4.1.1");
    assertEquals(1, links(feed, "self").size(), "4.1.1: a feed should say where it is");
    Set<String> ids = new HashSet<>();
    for (Element entry : children(feed, "entry")) {
      head(entry, "4.1.2");
      assertFalse(links(entry, "alternate").isEmpty(), "4.1.2: needed where there is no content");
      assertTrue(children(entry, "summary").size() <= 1, "4.1.2");
      assertTrue(ids.add(text(entry, "id")), "4.1.1: no entry twice with the same date");
      children(entry, "category").forEach(c -> assertFalse(c.getAttribute("term").isEmpty()));
    }
  }

  private static void head(Element element, String section) {
    assertTrue(URI.create(text(element, "id")).isAbsolute(), "4.2.6: an id is an absolute IRI");
    assertFalse(text(element, "title").isBlank(), section);
    // RFC 3339 with an upper-case T and Z or an offset
    assertTrue(text(element, "updated").matches("[0-9TZ:.+-]+"), "3.3");
    OffsetDateTime.parse(text(element, "updated"));
    List<Element> authors = children(element, "author");
    assertFalse(authors.isEmpty(), section);
    authors.forEach(author -> assertFalse(text(author, "name").isBlank(), "3.2.1"));
    Set<String> alternates = new HashSet<>();
    for (Element link : links(element, "alternate")) {
      assertTrue(URI.create(link.getAttribute("href")).isAbsolute(), "4.2.7.1, no xml:base here");
      String kind = link.getAttribute("type") + " " + link.getAttribute("hreflang");
      assertTrue(alternates.add(kind), section + ": one alternate of a kind");
    }
  }

  private static List<Element> links(Element parent, String relation) {
    return children(parent, "link").stream()
        .filter(link -> relation.equals(link.getAttribute("rel")))
        .toList();
  }

  /** The one element of that name; the RFC wants exactly one. */
  public static Element only(Element parent, String name) {
    List<Element> found = children(parent, name);
    assertEquals(1, found.size(), name);
    return found.get(0);
  }

  private static String text(Element parent, String name) {
    return only(parent, name).getTextContent();
  }

  private static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (name.equals(node.getLocalName()) && ATOM.equals(node.getNamespaceURI())) {
        found.add((Element) node);
      }
    }
    return found;
  }
}
