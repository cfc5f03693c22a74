package club.emberwell.exchange.open;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Direction;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.remark.Coded;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The words of the data as SKOS (W3C Recommendation of 18 August 2009) in JSON-LD: a scheme for
 * each vocabulary, and for each closed list of codes.
 */
final class Skos {
  private static final String LANGUAGE = "en";
  private static final Map<String, Object> CONTEXT =
      Map.of(
          "skos", "http://www.w3.org/2004/02/skos/core#",
          "dcterms", "http://purl.org/dc/terms/",
          "owl", "http://www.w3.org/2002/07/owl#");

  private final String base;
  private final List<Object> graph = new ArrayList<>();

  /**
   * @param base of the addresses of all words, ends with a slash
   */
  private Skos(String base) {
    this.base = base;
  }

  /** What Jackson writes as JSON-LD. */
  static Map<String, Object> of(Vocabulary words, String publicUrl) {
    Skos skos = new Skos(publicUrl + "/data/words/");
    for (TermKind kind : TermKind.values()) {
      skos.scheme(kind.code(), kind.plural());
      Stream.concat(words.terms(kind).stream(), words.redirects(kind).stream()).forEach(skos::term);
    }
    skos.codes("process", "Processes", Process.values(), Process::label);
    skos.codes("source", "Laser sources", LaserSource.values(), LaserSource::label);
    skos.codes("motion", "Motions", Motion.values(), Motion::label);
    skos.codes("regime", "Regimes by pulse duration", Regime.values(), Regime::label);
    skos.codes("direction", "Directions of the lines", Direction.values(), Direction::label);
    skos.codes("effect", "Effects", Effect.values(), Effect::label);
    Map<String, Object> document = new LinkedHashMap<>();
    document.put("@context", CONTEXT);
    document.put("@graph", skos.graph);
    return document;
  }

  private void scheme(String code, String title) {
    Map<String, Object> scheme = node(base + code, "skos:ConceptScheme");
    scheme.put("dcterms:title", said(title));
  }

  private void term(Term term) {
    Map<String, Object> concept = concept(term.kind().code(), term.slug(), term.label());
    if (!term.synonyms().isEmpty()) {
      // as people type them, in any language
      concept.put("skos:altLabel", term.synonyms());
    }
    if (term.parent() != null) {
      concept.put("skos:broader", reference(term.kind().code(), term.parent()));
    }
    if (term.note() != null) {
      concept.put("skos:note", said(term.note()));
    }
    if (term.hex() != null) {
      concept.put("skos:example", term.hex());
    }
    if (term.deprecated()) {
      concept.put("owl:deprecated", true);
    }
    if (term.replacedBy() != null) {
      concept.put("dcterms:isReplacedBy", reference(term.kind().code(), term.replacedBy()));
    }
  }

  private <E extends Coded> void codes(
      String scheme, String title, E[] all, Function<E, String> label) {
    scheme(scheme, title);
    for (E one : all) {
      concept(scheme, one.code(), label.apply(one));
    }
  }

  private Map<String, Object> concept(String scheme, String code, String label) {
    Map<String, Object> concept = node(base + scheme + "/" + code, "skos:Concept");
    concept.put("skos:notation", code);
    concept.put("skos:prefLabel", said(label));
    concept.put("skos:inScheme", Map.of("@id", base + scheme));
    return concept;
  }

  private Map<String, Object> node(String id, String type) {
    Map<String, Object> node = new LinkedHashMap<>();
    node.put("@id", id);
    node.put("@type", type);
    graph.add(node);
    return node;
  }

  private Map<String, Object> reference(String scheme, String code) {
    return Map.of("@id", base + scheme + "/" + code);
  }

  private static Map<String, Object> said(String text) {
    Map<String, Object> said = new LinkedHashMap<>();
    said.put("@value", text);
    said.put("@language", LANGUAGE);
    return said;
  }
}
