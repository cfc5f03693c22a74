package club.emberwell.web.outside;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** An XML document being written into memory; what XML cannot hold is left out of texts. */
final class Xml {
  private static final XMLOutputFactory WRITERS = XMLOutputFactory.newFactory();

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final XMLStreamWriter xml;

  /** One call of the writer. */
  @FunctionalInterface
  private interface Step {
    void run() throws XMLStreamException;
  }

  Xml() {
    try {
      xml = WRITERS.createXMLStreamWriter(bytes, StandardCharsets.UTF_8.name());
      xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
  }

  private Xml does(Step step) {
    try {
      step.run();
      return this;
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The root, in whose namespace everything is. */
  Xml open(String element, String namespace) {
    open(element);
    return does(() -> xml.writeDefaultNamespace(namespace));
  }

  Xml open(String element) {
    return does(() -> xml.writeStartElement(element));
  }

  /** An element with attributes alone, which follow. */
  Xml empty(String element) {
    return does(() -> xml.writeEmptyElement(element));
  }

  Xml attribute(String name, String value) {
    return does(() -> xml.writeAttribute(name, clean(value)));
  }

  Xml characters(String text) {
    return does(() -> xml.writeCharacters(clean(text)));
  }

  /** An element with nothing but text in it. */
  Xml text(String element, String text) {
    return open(element).characters(text).close();
  }

  Xml close() {
    return does(xml::writeEndElement);
  }

  /** The document, once everything is closed. */
  byte[] bytes() {
    does(xml::writeEndDocument).does(xml::close);
    return bytes.toByteArray();
  }

  /** XML 1.0, section 2.2, production Char. */
  private static String clean(String text) {
    return text.codePoints().allMatch(Xml::fits)
        ? text
        : text.codePoints()
            .filter(Xml::fits)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
  }

  private static boolean fits(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || c >= 0x20 && c <= 0xD7FF
        || c >= 0xE000 && c <= 0xFFFD
        || c >= 0x10000;
  }
}
