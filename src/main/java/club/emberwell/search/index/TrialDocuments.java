package club.emberwell.search.index;

import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Laser;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.search.column.Columns;
import club.emberwell.search.column.Documents;
import club.emberwell.search.column.PackedCodes;
import club.emberwell.search.match.FoldedTokens;
import club.emberwell.search.match.TextField;
import club.emberwell.search.match.Words;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchLimits;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.FieldType;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.index.IndexOptions;
import org.apache.lucene.index.IndexableField;
import org.apache.lucene.util.BytesRef;

/**
 * Makes the block of documents of a report: one per trial, side by side. Keeps the words of filed
 * materials, so one thread uses one of these for as long as the vocabulary stays the same.
 */
public final class TrialDocuments {
  private static final FieldType WORDS = new FieldType();

  static {
    WORDS.setIndexOptions(IndexOptions.DOCS);
    WORDS.setTokenized(true);
    WORDS.setOmitNorms(true);
    WORDS.freeze();
  }

  private final Vocabulary vocabulary;
  private final FacetCodes codes;
  private final Words words;
  private final Map<TermKind, Map<String, Set<String>>> filedWords = new EnumMap<>(TermKind.class);

  public TrialDocuments(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.codes = new FacetCodes(vocabulary);
    this.words = new Words(vocabulary.folding());
  }

  public List<Document> of(ReportSnapshot report) {
    List<IndexableField> shared = new ArrayList<>();
    identify(report, shared);
    for (WorkProperty property : WorkProperty.values()) {
      words(shared, TextField.of(property), wordsOf(property, report.work()));
    }
    words(shared, TextField.LASER, laser(report));
    words(shared, TextField.MACHINE, called(report.machine()));
    words(shared, TextField.MEMBER, wordsOf(report.author().handle()));
    shared.add(property(Columns.LENS, lens(report.laser())));
    shared.add(property(Columns.UNFILED, unfiled(report.work())));
    List<Document> block = new ArrayList<>(report.trials().size());
    for (int i = 0; i < report.trials().size(); i++) {
      Document document = new Document();
      shared.forEach(document::add);
      addTrial(document, report, report.trials().get(i), i);
      block.add(document);
    }
    return block;
  }

  private static void identify(ReportSnapshot report, List<IndexableField> fields) {
    Documents.identify(report.id(), fields::add);
    number(fields, Columns.REPORT, report.number());
    number(fields, Columns.MEMBER, report.author().number());
    number(fields, Columns.MACHINE, report.machine().number());
    number(fields, Columns.VERSION, report.version());
    number(fields, Columns.CREATED, report.createdAt().toEpochMilli());
  }

  /** Folded, so that two spellings of one unfiled word are one work. */
  private String unfiled(Work work) {
    return WorkProperty.of(Shape.WORD).stream()
        .map(work::word)
        .filter(word -> word.slug() == null && word.written() != null)
        .map(word -> vocabulary.folding().words(Folding.withoutThickness(word.written())))
        .map(words -> String.join(" ", words))
        .collect(Collectors.joining(" / "));
  }

  private static void number(List<IndexableField> fields, String name, long value) {
    fields.add(new NumericDocValuesField(name, value));
  }

  private static IndexableField property(String name, String value) {
    String given = value == null ? "" : value.strip();
    int end = Math.min(given.length(), SearchLimits.VALUE);
    return new SortedDocValuesField(name, new BytesRef(given.substring(0, end)));
  }

  private void addTrial(
      Document document, ReportSnapshot report, TrialSnapshot trial, int position) {
    document.add(new NumericDocValuesField(Columns.TRIAL, position));
    long packed = PackedCodes.pack(report.process(), report.laser(), trial);
    document.add(new NumericDocValuesField(Columns.CODES, packed));
    for (Measure measure : Measure.all()) {
      if (!measure.isPacked()) {
        document.add(new NumericDocValuesField(measure.field(), measure.bits(report, trial)));
      }
    }
    for (RangeField range : RangeField.all()) {
      Double value = range.valueOf(report, trial);
      if (value != null && !value.isNaN()) {
        document.add(new DoublePoint(range.field(), value));
      }
    }
    for (Facet facet : Facet.values()) {
      String code = codes.code(facet, report, trial);
      document.add(new StringField(facet.field(), code, Field.Store.NO));
      document.add(new SortedDocValuesField(facet.field(), new BytesRef(code)));
    }
  }

  private static void words(List<IndexableField> fields, TextField field, Set<String> found) {
    if (!found.isEmpty() && field.weight() > 0) {
      fields.add(new Field(field.field(), new FoldedTokens(List.copyOf(found)), WORDS));
    }
  }

  private Set<String> wordsOf(String text) {
    Set<String> found = new LinkedHashSet<>();
    words.addTo(found, text);
    return found;
  }

  private Set<String> wordsOf(WorkProperty property, Work work) {
    return switch (property.value().shape()) {
      case WORD -> filed(property.value().vocabulary(), work.word(property));
      case TEXT, LINES -> wordsOf(work.text(property));
      case QUANTITY -> Set.of();
    };
  }

  private Set<String> filed(TermKind kind, Filed word) {
    Set<String> found = wordsOf(word.written());
    if (word.slug() != null) {
      found.addAll(
          filedWords
              .computeIfAbsent(kind, key -> new HashMap<>())
              .computeIfAbsent(word.slug(), key -> alongPath(kind, key)));
    }
    return found;
  }

  private Set<String> alongPath(TermKind kind, String slug) {
    Set<String> found = new LinkedHashSet<>();
    for (Term term : vocabulary.path(kind, slug)) {
      words.addTo(found, term.label());
      // not word by word: "black cherry" must not make every cherry board black
      term.synonyms().forEach(synonym -> words.addWhole(found, synonym));
    }
    return found;
  }

  private Set<String> called(Burner machine) {
    Set<String> found = wordsOf(machine.name());
    words.addTo(found, machine.model());
    return found;
  }

  private Set<String> laser(ReportSnapshot report) {
    Set<String> found = new LinkedHashSet<>();
    Laser laser = report.laser();
    words.addTo(found, laser.source().label() + " laser");
    words.addTo(found, laser.band().label());
    words.addTo(found, laser.regime().label());
    words.addTo(found, report.process().label());
    words.addTo(found, plain(laser.ratedPowerW()) + " W");
    words.addTo(found, plain(laser.wavelengthNm()) + " nm");
    if (laser.motion() != null) {
      words.addTo(found, laser.motion().label());
    }
    return found;
  }

  private static String lens(Laser laser) {
    return laser.lensFocalMm() == null ? null : plain(laser.lensFocalMm());
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
