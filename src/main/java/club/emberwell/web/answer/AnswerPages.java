package club.emberwell.web.answer;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.QueryLabel;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.plot.SpeedPlot;
import club.emberwell.web.range.DetailView;
import club.emberwell.web.range.MachineView;
import club.emberwell.web.range.WorksView;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** All about one work: the answer first, then speed against power, the rest folded. */
@Path("/range")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class AnswerPages extends Pages {
  private static final String SPACING = "spacing";
  private static final String WITH = "/compare?with=";

  private final ConsensusService consensus;
  private final CatalogService catalog;
  private final AnswerViews answers;

  AnswerPages(ConsensusService consensus, CatalogService catalog, AnswerViews answers) {
    this.consensus = consensus;
    this.catalog = catalog;
    this.answers = answers;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance range(Page page);
  }

  /**
   * @param query the search in words
   * @param details one for each panel
   */
  record Page(
      String query,
      Ways ways,
      Notices notices,
      List<AnswerView> panels,
      List<Detail> details,
      WorksView works) {}

  /**
   * Addresses from here: the search page with the same search, and a comparison with it.
   *
   * @param search its parameters, for the same as a file
   */
  record Ways(String back, String compare, String search) {}

  /**
   * What comes before the answer.
   *
   * @param problems what was not understood of the address
   * @param banned what is prohibited of what is asked for; where nothing is answered all cautions
   */
  record Notices(List<String> problems, CautionsView banned) {}

  /**
   * What follows a panel.
   *
   * @param mine the reader's machine, or null
   */
  record Detail(DetailView view, OnMine mine) {}

  /**
   * A range on the reader's machine.
   *
   * @param plot null where nothing may be carried over
   * @param hidden what the form with the line spacing carries along
   * @param spacing as typed, or null
   */
  record OnMine(
      MachineView machine, SpeedPlot plot, List<QueryString.Pair> hidden, String spacing) {}

  @GET
  public TemplateInstance range(@Context UriInfo uri) {
    MultivaluedMap<String, String> sent = uri.getQueryParameters();
    Actor actor = actor();
    SearchQueryCodec.Parsed parsed =
        SearchQueryCodec.read(
            sent,
            catalog.snapshot().vocabulary(),
            Set.of(AnswerViews.MACHINE, SPACING),
            actor.units().style());
    List<String> problems =
        new ArrayList<>(parsed.problems().stream().map(Remark::detail).toList());
    UUID machine = machine(sent.getFirst(AnswerViews.MACHINE), actor, problems);
    Double spacing = spacing(sent.getFirst(SPACING), actor, problems);
    ConsensusService.Answer found =
        consensus.answer(new ConsensusService.Ask(parsed.query(), actor, machine, spacing, true));
    List<AnswerView> panels = answers.onRange(found, parsed.query(), actor);
    String parameters = SearchQueryCodec.write(parsed.query().withPage(0));
    if (problems.isEmpty()) {
      page.preview(preview(parsed.query().unordered(), panels));
    }
    CautionsView cautions =
        CautionsView.of(
            QueryCautions.of(parsed.query(), catalog.snapshot()),
            catalog.snapshot().vocabulary(),
            actor.units());
    List<Detail> details = new ArrayList<>();
    Stream.concat(found.one().stream(), found.borrowed().stream())
        .forEach(one -> details.add(detail(one, found, sent.getFirst(SPACING), parameters, actor)));
    WorksView.Reader reader =
        new WorksView.Reader(parsed.query(), catalog.vocabulary(), actor.units(), "/range?");
    return Templates.range(
        new Page(
            QueryLabel.of(parsed.query(), catalog.vocabulary()),
            new Ways("/?" + parameters, WITH + QueryString.encoded(parameters), parameters),
            new Notices(problems, panels.isEmpty() ? cautions : cautions.banned()),
            panels,
            details,
            WorksView.of(AnswerViews.otherWorks(found), reader, Integer.MAX_VALUE)));
  }

  private Preview preview(SearchQuery query, List<AnswerView> panels) {
    String said =
        panels.isEmpty()
            ? "What members used for "
                + QueryLabel.of(query, catalog.vocabulary())
                + ", for each kind of work and laser."
            : panels.stream().map(AnswerView::getDescription).collect(Collectors.joining(" "));
    String search = SearchQueryCodec.write(query.withPage(0));
    return Preview.of("/range?" + search, said)
        .withDrawn(panels.isEmpty() ? null : "/preview/range.png?" + search)
        .listedIf(query.isOneChoice() && !panels.isEmpty());
  }

  private Detail detail(
      RangeDetail one,
      ConsensusService.Answer found,
      String spacing,
      String parameters,
      Actor actor) {
    List<QueryString.Pair> hidden = new ArrayList<>(QueryString.pairs(parameters));
    found
        .mine()
        .chosen()
        .ifPresent(
            machine ->
                hidden.add(new QueryString.Pair(AnswerViews.MACHINE, machine.id().toString())));
    String scope = "r" + one.range().key().hashCode();
    return new Detail(
        DetailView.of(one, actor.units(), scope),
        one.forMachine()
            .map(
                mine ->
                    new OnMine(
                        MachineView.of(
                            mine, one.range(), one.answer().flatMap(Answer::factor), actor.units()),
                        answers.speeds(one, mine, actor),
                        hidden,
                        spacing))
            .orElse(null));
  }

  private UUID machine(String text, Actor actor, List<String> problems) {
    UUID found = answers.machine(text, actor).orElse(null);
    if (found == null && text != null && !text.isBlank()) {
      problems.add("This machine is not on your bench.");
    }
    return found;
  }

  private static Double spacing(String text, Actor actor, List<String> problems) {
    if (text == null || text.isBlank()) {
      return null;
    }
    Reading<Quantity> read =
        QuantityReader.read(QuantityKind.LINE_SPACING, text, actor.units().style());
    read.remarks().stream()
        .filter(Remark::isError)
        .forEach(r -> problems.add("Line spacing: " + r.detail()));
    return read.value().map(Quantity::doubleValue).orElse(null);
  }
}
