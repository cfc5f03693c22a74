package club.emberwell.web.desk;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.TermDraft;
import club.emberwell.desk.word.MergeEffects;
import club.emberwell.desk.word.MergeEffects.Effects;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.desk.word.VocabularyCare.Change;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame.Place;
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
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Care of the club's words: filing, spellings, merging. */
@Path("/desk/terms")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class VocabularyPages extends Pages {
  private static final String PATH = "/desk/terms/";
  private static final String ALIKE = "yes";

  private final VocabularyCare care;
  private final MergeEffects effects;
  private final CatalogService catalog;

  VocabularyPages(VocabularyCare care, MergeEffects effects, CatalogService catalog) {
    this.care = care;
    this.effects = effects;
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance list(
        String kind, String q, List<Place> tabs, List<TermLine> terms, List<Term> merged);

    static native TemplateInstance term(TermPage page);

    static native TemplateInstance merge(MergePage page);
  }

  /** One term of a list, so far below the top. */
  record TermLine(Term term, int depth) {}

  /** One term with its forms and history. */
  record TermPage(Term term, List<Term> all, Form edit, Form spell, List<Change> history) {}

  /** What a merge would do, and confirming it. */
  record MergePage(Term term, Term into, Effects effects, Form form) {}

  @GET
  public Response first() {
    return to(PATH + TermKind.MATERIAL.code());
  }

  @GET
  @Path("{kind}")
  public TemplateInstance list(@RestPath String kind, @RestQuery String q) {
    TermKind which = kind(kind);
    Vocabulary now = catalog.vocabulary();
    String part = q == null ? "" : q.strip();
    List<String> sought = now.folding().words(part);
    return Templates.list(
        kind,
        part,
        Stream.of(TermKind.values())
            .map(k -> new Place(PATH + k.code(), k.plural(), null, k == which))
            .toList(),
        now.terms(which).stream()
            .filter(term -> has(now.folding(), term, sought))
            .map(term -> new TermLine(term, part.isEmpty() ? depth(now, term) : 0))
            .toList(),
        now.redirects(which).stream().filter(term -> has(now.folding(), term, sought)).toList());
  }

  /** Whether one of its spellings has all the words, in whatever order. */
  private static boolean has(Folding folding, Term term, List<String> words) {
    return Stream.concat(Stream.of(term.label(), term.slug()), term.synonyms().stream())
        .map(folding::fold)
        .anyMatch(text -> words.stream().allMatch(text::contains));
  }

  private static int depth(Vocabulary vocabulary, Term term) {
    return Math.min(3, vocabulary.path(term.kind(), term.slug()).size() - 1);
  }

  static TermKind kind(String code) {
    return Coded.of(TermKind.class, code).orElseThrow(() -> new EntryUnknown("vocabulary"));
  }

  @GET
  @Path("{kind}/{slug}")
  public TemplateInstance term(@RestPath String kind, @RestPath String slug) {
    Term term = find(kind, slug);
    return shown(term, edit(term), spell());
  }

  private Term find(String kind, String slug) {
    return care.term(actor(), kind(kind), slug);
  }

  private TemplateInstance shown(Term term, Form edit, Form spell) {
    return Templates.term(
        new TermPage(
            term,
            catalog.vocabulary().terms(term.kind()),
            edit,
            spell,
            care.termHistory(actor(), term.kind(), term.slug(), Part.FIRST).rows()));
  }

  private static Form edit(Term term) {
    TermDraft draft = TermDraft.of(term);
    return new Form()
        .changing("term", term.version(), path(term))
        .add(
            Field.of("label", "Label")
                .maxLength(CatalogLimits.TEXT)
                .value(draft.label())
                .required())
        .add(wider().value(draft.parent()))
        .add(
            Field.of("respondsAlike", "Do all kinds of it respond alike?")
                .hint("If they do, their results count together in one range.")
                .choice("no", "No, each by itself")
                .choice(ALIKE, "Yes, together")
                .value(draft.respondsAlike() ? ALIKE : "no"))
        .add(Field.of("note", "Note").maxLength(CatalogLimits.REASON).value(draft.note()))
        .add(Field.of("hex", "Colour code").hint("Colours only, like #1b2545.").value(draft.hex()))
        .add(DeskForms.reason("The history shows it."));
  }

  /** Below which term another stands. */
  static Field wider() {
    return Field.of("parent", "Wider term")
        .hint("Its name, a spelling or its id.")
        .list("terms")
        .maxLength(CatalogLimits.TEXT);
  }

  private static String path(Term term) {
    return PATH + term.kind().code() + "/" + term.slug();
  }

  private static Form spell() {
    return new Form()
        .add(Field.of("text", "Another spelling").maxLength(CatalogLimits.TEXT).required())
        .add(DeskForms.reason("The history shows it."));
  }

  @POST
  @Path("{kind}/{slug}/edit")
  public Response edit(@RestPath String kind, @RestPath String slug, SentForm sent) {
    Term term = find(kind, slug);
    return take(sent, () -> edit(find(kind, slug)), form -> shown(find(kind, slug), form, spell()))
        .run(
            s ->
                care.edit(
                    actor(),
                    term.kind(),
                    slug,
                    s.version(),
                    new TermDraft(
                        s.typed("label"),
                        s.typed("parent"),
                        ALIKE.equals(s.typed("respondsAlike")),
                        s.typed("note"),
                        s.typed("hex"),
                        term.deprecated()),
                    s.typed("reason")))
        .then(path(term));
  }

  @POST
  @Path("{kind}/{slug}/spell")
  public Response spell(@RestPath String kind, @RestPath String slug, SentForm sent) {
    Term term = find(kind, slug);
    return take(sent, VocabularyPages::spell, form -> shown(term, edit(term), form))
        .run(
            s -> {
              String text = s.typed("text");
              String reason = s.typed("reason");
              if (s.typed("remove") == null) {
                care.addSpelling(actor(), term.kind(), slug, text, false, reason);
              } else {
                care.removeSpelling(actor(), term.kind(), slug, text, reason);
              }
            })
        .then(path(term));
  }

  @GET
  @Path("{kind}/{slug}/merge")
  public TemplateInstance merge(
      @RestPath String kind, @RestPath String slug, @RestQuery String into) {
    return merging(kind, slug, into, mergeForm());
  }

  private static Form mergeForm() {
    return DeskForms.because("The history of both shows it.");
  }

  private TemplateInstance merging(String kind, String slug, String into, Form form) {
    Term term = find(kind, slug);
    Term other = care.named(actor(), term.kind(), "/into", into);
    return Templates.merge(
        new MergePage(
            term, other, effects.of(actor(), term.kind(), term.slug(), other.slug()), form));
  }

  @POST
  @Path("{kind}/{slug}/merge")
  public Response merge(@RestPath String kind, @RestPath String slug, SentForm sent) {
    return take(
            sent, VocabularyPages::mergeForm, form -> merging(kind, slug, sent.typed("into"), form))
        .run(s -> care.merge(actor(), kind(kind), slug, s.typed("into"), s.typed("reason")))
        .then(PATH + kind + "/" + slug);
  }

  @POST
  @Path("{kind}/{slug}/unmerge")
  public Response unmerge(@RestPath String kind, @RestPath String slug, SentForm sent) {
    Term term = find(kind, slug);
    return take(sent, () -> edit(term), form -> shown(term, form, spell()))
        .run(s -> care.undoMerge(actor(), term.kind(), slug, s.typed("reason")))
        .then(path(term));
  }
}
