package club.emberwell.web.desk;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Match;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.TermDraft;
import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Words that matched no term: each is filed, becomes a term, or is laid aside. */
@Path("/desk/words")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class WordPages extends Pages {
  private static final String PATH = "/desk/words";

  private final VocabularyCare care;
  private final CatalogService catalog;

  WordPages(VocabularyCare care, CatalogService catalog) {
    this.care = care;
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance words(Listing<Unfiled> list);

    static native TemplateInstance word(WordPage page);
  }

  /**
   * One word with what can be done about it.
   *
   * @param near terms that are spelled much like it
   */
  record WordPage(
      Unfiled word,
      List<Term> near,
      List<Term> all,
      Form file,
      Form add,
      Form dismiss,
      Turn turn) {}

  @GET
  public TemplateInstance words(@RestQuery Integer page) {
    return Templates.words(
        Listing.of("New words", "No new words.", care.waiting(actor(), Part.page(page)), PATH));
  }

  @GET
  @Path("{id}")
  public TemplateInstance word(@RestPath UUID id, @RestQuery String by, @RestQuery String place) {
    Unfiled word = find(id);
    return shown(word, file(), add(word), dismiss(), new Turn(by, place));
  }

  private Unfiled find(UUID id) {
    return catalog.unfiled(id).orElseThrow(() -> new EntryUnknown("word"));
  }

  private TemplateInstance shown(Unfiled word, Form file, Form add, Form dismiss, Turn turn) {
    return Templates.word(
        new WordPage(
            word, near(word), catalog.vocabulary().terms(word.kind()), file, add, dismiss, turn));
  }

  /** What it means now, else what is spelled much like it. */
  private List<Term> near(Unfiled word) {
    Match match = catalog.vocabulary().resolve(word.kind(), word.written());
    return Stream.concat(match.term().stream(), match.candidates().stream()).toList();
  }

  private static Form file() {
    return new Form()
        .add(
            Field.of("term", "Term")
                .hint("Its name, a spelling or its id.")
                .list("terms")
                .maxLength(CatalogLimits.TEXT)
                .required());
  }

  private static Form add(Unfiled word) {
    return new Form()
        .add(
            Field.of("value", "Id of the new term")
                .hint("Lower-case words with dashes. You cannot change it later.")
                .maxLength(Slugs.MOST)
                .value(Slugs.of(word.written()))
                .required())
        .add(
            Field.of("label", "Label")
                .maxLength(CatalogLimits.TEXT)
                .value(word.written())
                .required())
        .add(VocabularyPages.wider());
  }

  private static Form dismiss() {
    return DeskForms.because("The history shows it.");
  }

  @POST
  @Path("{id}/file")
  public Response file(@RestPath UUID id, SentForm sent) {
    Unfiled word = find(id);
    return take(
            sent, WordPages::file, form -> shown(word, form, add(word), dismiss(), Turn.of(sent)))
        .run(s -> care.file(actor(), id, s.values().getOrDefault("term", ""), null))
        .then(Turn.of(sent).or(PATH));
  }

  @POST
  @Path("{id}/term")
  public Response term(@RestPath UUID id, SentForm sent) {
    Unfiled word = find(id);
    return take(sent, () -> add(word), form -> shown(word, file(), form, dismiss(), Turn.of(sent)))
        .run(
            s ->
                care.add(
                    actor(),
                    word.kind(),
                    s.typed("value"),
                    new TermDraft(s.typed("label"), s.typed("parent"), false, null, null, false),
                    id,
                    null))
        .then(Turn.of(sent).or(PATH));
  }

  @POST
  @Path("{id}/dismiss")
  public Response dismiss(@RestPath UUID id, SentForm sent) {
    Unfiled word = find(id);
    return take(
            sent, WordPages::dismiss, form -> shown(word, file(), add(word), form, Turn.of(sent)))
        .run(s -> care.dismiss(actor(), id, s.typed("reason")))
        .then(Turn.of(sent).or(PATH));
  }
}
