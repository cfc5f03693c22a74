package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermDraft;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Unfiled;
import club.emberwell.desk.VocabularyCare;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
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
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Words that matched no term: each is filed, becomes a term, or is laid aside. */
@Path("/desk/words")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class WordPages {
  private final VocabularyCare care;
  private final CatalogService catalog;
  private final CurrentActor current;
  private final DeskForms forms;

  WordPages(VocabularyCare care, CatalogService catalog, CurrentActor current, DeskForms forms) {
    this.care = care;
    this.catalog = catalog;
    this.current = current;
    this.forms = forms;
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
      Unfiled word, List<Term> near, List<Term> all, Form file, Form add, Form dismiss) {}

  @GET
  public TemplateInstance words(@RestQuery Integer page) {
    return Templates.words(
        Listing.of(
            "Words nobody has filed yet",
            "Every word is filed.",
            care.waiting(current.get(), page),
            "/desk/words"));
  }

  @GET
  @Path("{id}")
  public TemplateInstance word(@RestPath UUID id) {
    Unfiled word = find(id);
    return shown(word, file(""), add(Slugs.of(word.written()), word.written(), ""), dismiss(""));
  }

  private Unfiled find(UUID id) {
    return catalog.unfiled(id).orElseThrow(() -> new EntryUnknown("word"));
  }

  private TemplateInstance shown(Unfiled word, Form file, Form add, Form dismiss) {
    return Templates.word(
        new WordPage(
            word,
            catalog.vocabulary().resolve(word.kind(), word.written()).candidates(),
            catalog.vocabulary().terms(word.kind()),
            file,
            add,
            dismiss));
  }

  private static Form file(String term) {
    return new Form()
        .add(
            Field.of("term", "Which term it means")
                .hint("Its label, a spelling of it or its id.")
                .list("terms")
                .maxLength(CatalogLimits.TEXT)
                .value(term)
                .required());
  }

  private static Form add(String slug, String label, String parent) {
    return new Form()
        .add(
            Field.of("slug", "Id of the new term")
                .hint("Lower-case words with dashes; never changed later.")
                .maxLength(Slugs.MOST)
                .value(slug)
                .required())
        .add(Field.of("label", "Label").maxLength(CatalogLimits.TEXT).value(label).required())
        .add(
            Field.of("parent", "Wider term")
                .hint("Its label, a spelling of it or its id.")
                .list("terms")
                .maxLength(CatalogLimits.TEXT)
                .value(parent));
  }

  private static Form dismiss(String reason) {
    return new Form().add(DeskForms.reason(reason, "Stands in its history."));
  }

  @POST
  @Path("{id}/file")
  public Response file(@RestPath UUID id, @RestForm String term) {
    Unfiled word = find(id);
    return forms.send(
        () -> care.file(current.get(), id, term == null ? "" : term.strip(), null),
        "/desk/words",
        file(term),
        form -> shown(word, form, add(Slugs.of(word.written()), word.written(), ""), dismiss("")));
  }

  @POST
  @Path("{id}/term")
  public Response term(
      @RestPath UUID id, @RestForm String slug, @RestForm String label, @RestForm String parent) {
    Unfiled word = find(id);
    TermKind kind = word.kind();
    TermDraft draft = new TermDraft(label, parent, null, null, false);
    return forms.send(
        () -> care.add(current.get(), kind, slug, draft, id, null),
        "/desk/words",
        add(slug, label, parent),
        form -> shown(word, file(""), form, dismiss("")));
  }

  @POST
  @Path("{id}/dismiss")
  public Response dismiss(@RestPath UUID id, @RestForm String reason) {
    Unfiled word = find(id);
    return forms.send(
        () -> care.dismiss(current.get(), id, reason),
        "/desk/words",
        dismiss(reason),
        form -> shown(word, file(""), add(Slugs.of(word.written()), word.written(), ""), form));
  }
}
