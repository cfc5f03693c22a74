package club.emberwell.search.talk;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.search.column.Documents;
import club.emberwell.search.match.FoldedTokens;
import club.emberwell.search.match.Words;
import club.emberwell.search.query.Facet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.FieldType;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.index.IndexOptions;

/** Makes the document of a question or a notice. */
final class TalkDocuments {
  static final String KIND = "kind";
  static final String ANSWERED = "answered";
  static final String NUMBER = "n_number";

  static final String TITLE = "t_title";
  static final String BODY = "t_body";

  /** Names of what it is tied to. */
  static final String TIES = "t_ties";

  static final String CONTROLLER = "t_controller";

  /** The value of a tie that is not there. */
  static final String NONE = "-";

  private static final FieldType WORDS = new FieldType();

  static {
    WORDS.setIndexOptions(IndexOptions.DOCS_AND_FREQS);
    WORDS.setTokenized(true);
    WORDS.freeze();
  }

  private final Vocabulary vocabulary;
  private final Words words;

  TalkDocuments(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.words = new Words(vocabulary.folding());
  }

  Document of(TalkText text) {
    TalkText.About about = text.about();
    Document document = new Document();
    Documents.identify(text.id(), document::add);
    document.add(new StringField(KIND, text.kind().code(), Field.Store.NO));
    document.add(new StringField(ANSWERED, text.answered() ? "yes" : "no", Field.Store.NO));
    document.add(new NumericDocValuesField(NUMBER, text.number()));
    tie(document, Facet.MATERIAL, slug(TermKind.MATERIAL, about.material()));
    tie(document, Facet.COATING, slug(TermKind.COATING, about.coating()));
    tie(document, Facet.SOURCE, about.source());
    tie(document, Facet.PROCESS, about.process());
    add(document, TITLE, List.of(orNothing(text.title())));
    add(document, BODY, List.of(orNothing(text.body())));
    add(document, TIES, tieNames(about));
    if (about.controllerVersion() == null) {
      document.add(new Field(CONTROLLER, new FoldedTokens(List.of(NONE)), WORDS));
    } else {
      add(document, CONTROLLER, List.of(about.controllerVersion()));
    }
    return document;
  }

  private static void tie(Document document, Facet facet, String code) {
    document.add(new StringField(facet.field(), code == null ? NONE : code, Field.Store.NO));
  }

  private String slug(TermKind kind, String slug) {
    return vocabulary.successor(kind, slug).map(Term::slug).orElse(slug);
  }

  private List<String> tieNames(TalkText.About about) {
    List<String> names = new ArrayList<>();
    names(names, TermKind.MATERIAL, about.material());
    names(names, TermKind.COATING, about.coating());
    Optional.ofNullable(about.source())
        .flatMap(LaserSource::of)
        .ifPresent(source -> names.add(source.label() + " laser"));
    Optional.ofNullable(about.process())
        .flatMap(Process::of)
        .ifPresent(process -> names.add(process.label()));
    names.add(orNothing(about.machineModel()));
    names.add(orNothing(about.controllerVersion()));
    return names;
  }

  private void names(List<String> names, TermKind kind, String slug) {
    if (slug != null) {
      vocabulary.path(kind, slug).forEach(term -> names.add(term.label()));
    }
  }

  private void add(Document document, String field, List<String> texts) {
    List<String> found = new ArrayList<>();
    texts.forEach(text -> words.addTo(found, text));
    if (!found.isEmpty()) {
      document.add(new Field(field, new FoldedTokens(found), WORDS));
    }
  }

  private static String orNothing(String text) {
    return text == null ? "" : text;
  }
}
