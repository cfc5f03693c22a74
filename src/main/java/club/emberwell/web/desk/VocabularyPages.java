package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermDraft;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.desk.MergeEffects;
import club.emberwell.desk.MergeEffects.Effects;
import club.emberwell.desk.StateDifference;
import club.emberwell.desk.VocabularyCare;
import club.emberwell.desk.VocabularyCare.Change;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.FieldChange;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame.Place;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Care of the club's words: filing, spellings, merging. */
@Path("/desk/terms")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class VocabularyPages {
  private static final String PATH = "/desk/terms/";

  private final VocabularyCare care;
  private final MergeEffects effects;
  private final CatalogService catalog;
  private final CurrentActor current;
  private final DeskForms forms;

  VocabularyPages(
      VocabularyCare care,
      MergeEffects effects,
      CatalogService catalog,
      CurrentActor current,
      DeskForms forms) {
    this.care = care;
    this.effects = effects;
    this.catalog = catalog;
    this.current = current;
    this.forms = forms;
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

  /**
   * One term with its forms and history.
   *
   * @param meanwhile from what stands now to what was sent, where somebody else was faster
   */
  record TermPage(
      Term term,
      List<Term> all,
      List<FieldChange> meanwhile,
      Form edit,
      Form spell,
      List<Change> history) {}

  /** What a merge would do, and confirming it. */
  record MergePage(Term term, Term into, Effects effects, Form form) {}

  @GET
  @Path("{kind}")
  public TemplateInstance list(@RestPath String kind, @RestQuery String q) {
    TermKind which = kind(kind);
    Vocabulary now = catalog.vocabulary();
    String part = q == null ? "" : q.strip();
    String sought = part.toLowerCase(Locale.ROOT);
    return Templates.list(
        kind,
        part,
        Stream.of(TermKind.values())
            .map(k -> new Place(PATH + k.code(), k.plural(), null, k == which))
            .toList(),
        now.terms(which).stream()
            .filter(term -> has(term, sought))
            .map(term -> new TermLine(term, part.isEmpty() ? depth(now, term) : 0))
            .toList(),
        now.redirects(which).stream().filter(term -> has(term, sought)).toList());
  }

  private static boolean has(Term term, String part) {
    return Stream.concat(Stream.of(term.label(), term.slug()), term.synonyms().stream())
        .anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(part));
  }

  private static int depth(Vocabulary vocabulary, Term term) {
    return Math.min(3, vocabulary.path(term.kind(), term.slug()).size() - 1);
  }

  static TermKind kind(String code) {
    return TermKind.of(code).orElseThrow(() -> new EntryUnknown("vocabulary"));
  }

  @GET
  @Path("{kind}/{slug}")
  public TemplateInstance term(@RestPath String kind, @RestPath String slug) {
    Term term = care.term(current.get(), kind(kind), slug);
    TermDraft draft = TermDraft.of(term);
    return shown(term, edit(draft, ""), spell("", ""));
  }

  private TemplateInstance shown(Term term, Form edit, Form spell) {
    return shown(term, List.of(), edit, spell);
  }

  private TemplateInstance shown(Term term, List<FieldChange> meanwhile, Form edit, Form spell) {
    return Templates.term(
        new TermPage(
            term,
            catalog.vocabulary().terms(term.kind()),
            meanwhile,
            edit,
            spell,
            care.termHistory(current.get(), term.kind(), term.slug(), 0)));
  }

  private static Form edit(TermDraft draft, String reason) {
    return new Form()
        .add(
            Field.of("label", "Label")
                .maxLength(CatalogLimits.TEXT)
                .value(draft.label())
                .required())
        .add(
            Field.of("parent", "Wider term")
                .hint("Its label, a spelling of it or its id.")
                .list("terms")
                .maxLength(CatalogLimits.TEXT)
                .value(draft.parent()))
        .add(Field.of("note", "Note").maxLength(CatalogLimits.REASON).value(draft.note()))
        .add(
            Field.of("hex", "Colour anchor").hint("Colours only, like #1b2545.").value(draft.hex()))
        .add(DeskForms.reason(reason, "Stands in its history."));
  }

  private static Form spell(String text, String reason) {
    return new Form()
        .add(
            Field.of("text", "Another spelling")
                .maxLength(CatalogLimits.TEXT)
                .value(text)
                .required())
        .add(DeskForms.reason(reason, "Stands in its history.").required());
  }

  @POST
  @Path("{kind}/{slug}/edit")
  public Response edit(
      @RestPath String kind,
      @RestPath String slug,
      @RestForm int version,
      @RestForm String label,
      @RestForm String parent,
      @RestForm String note,
      @RestForm String hex,
      @RestForm String reason) {
    Term term = care.term(current.get(), kind(kind), slug);
    TermDraft draft = new TermDraft(label, parent, note, hex, term.deprecated());
    try {
      return forms.send(
          () -> care.edit(current.get(), term.kind(), slug, version, draft, reason),
          PATH + kind + "/" + slug,
          edit(draft, reason),
          form -> shown(term, form, spell("", "")));
    } catch (EntryChanged e) {
      Term now = care.term(current.get(), term.kind(), slug);
      return Response.status(Response.Status.PRECONDITION_FAILED)
          .entity(shown(now, meanwhile(now, draft), edit(draft, reason), spell("", "")))
          .build();
    }
  }

  private static List<FieldChange> meanwhile(Term now, TermDraft sent) {
    return StateDifference.between(
        fields(now.label(), now.parent(), now.note(), now.hex()),
        fields(sent.label(), sent.parent(), sent.note(), sent.hex()));
  }

  private static Map<String, Object> fields(String label, String parent, String note, String hex) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("label", label);
    fields.put("wider term", parent);
    fields.put("note", note);
    fields.put("colour anchor", hex);
    fields.values().removeIf(value -> value == null || value.equals(""));
    return fields;
  }

  @POST
  @Path("{kind}/{slug}/spell")
  public Response spell(
      @RestPath String kind,
      @RestPath String slug,
      @RestForm String text,
      @RestForm String reason,
      @RestForm String remove) {
    Term term = care.term(current.get(), kind(kind), slug);
    TermDraft draft = TermDraft.of(term);
    return forms.send(
        () -> {
          if (remove == null) {
            care.addSpelling(current.get(), term.kind(), slug, text, false, reason);
          } else {
            care.removeSpelling(current.get(), term.kind(), slug, text, reason);
          }
        },
        PATH + kind + "/" + slug,
        spell(text, reason),
        form -> shown(term, edit(draft, ""), form));
  }

  @GET
  @Path("{kind}/{slug}/merge")
  public TemplateInstance merge(
      @RestPath String kind, @RestPath String slug, @RestQuery String into) {
    return merging(kind, slug, into, mergeForm(""));
  }

  private static Form mergeForm(String reason) {
    return new Form().add(DeskForms.reason(reason, "Stands in the history of both."));
  }

  private TemplateInstance merging(String kind, String slug, String into, Form form) {
    Term term = care.term(current.get(), kind(kind), slug);
    Term other = care.named(current.get(), term.kind(), "/into", into);
    return Templates.merge(
        new MergePage(
            term, other, effects.of(current.get(), term.kind(), term.slug(), other.slug()), form));
  }

  @POST
  @Path("{kind}/{slug}/merge")
  public Response merge(
      @RestPath String kind,
      @RestPath String slug,
      @RestForm String into,
      @RestForm String reason) {
    return forms.send(
        () -> care.merge(current.get(), kind(kind), slug, into, reason),
        PATH + kind + "/" + slug,
        mergeForm(reason),
        form -> merging(kind, slug, into, form));
  }

  @POST
  @Path("{kind}/{slug}/unmerge")
  public Response unmerge(@RestPath String kind, @RestPath String slug, @RestForm String reason) {
    Term term = care.term(current.get(), kind(kind), slug);
    TermDraft draft = TermDraft.of(term);
    return forms.send(
        () -> care.undoMerge(current.get(), term.kind(), slug, reason),
        PATH + kind + "/" + slug,
        edit(draft, reason),
        form -> shown(term, form, spell("", "")));
  }
}
