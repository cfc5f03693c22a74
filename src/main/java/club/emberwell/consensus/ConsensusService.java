package club.emberwell.consensus;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.factor.KeptFactors;
import club.emberwell.consensus.factor.MachineFactors;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportBriefs;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.search.SearchService;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.match.TextReading;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Ranges over what a search finds. Costs one pass over the matching trials; nothing is sampled or
 * sketched.
 */
@ApplicationScoped
public class ConsensusService {
  private final SearchService search;
  private final KeptGroups groups;
  private final KeptFactors factors;
  private final CatalogService catalog;
  private final Machines machines;
  private final Members members;
  private final ReportBriefs reports;

  ConsensusService(
      SearchService search,
      CatalogService catalog,
      Machines machines,
      Members members,
      ReportBriefs reports) {
    this.search = search;
    this.groups = new KeptGroups(search);
    factors = new KeptFactors(search, () -> groups.of(SearchQuery.everything()));
    this.catalog = catalog;
    this.machines = machines;
    this.members = members;
    this.reports = reports;
  }

  /**
   * What is asked for in full.
   *
   * @param machine one of the actor's machines to carry the range to, or null
   * @param spacingMm line spacing to use there, mm; null = the middle of peers'
   * @param explain whether every number opens to its voices, formula and source
   */
  public record Ask(
      SearchQuery query, Actor actor, UUID machine, Double spacingMm, boolean explain) {}

  /**
   * What a search comes to.
   *
   * @param one the answer, where the search meets one work
   * @param others beside the answer other lasers and works; without one all that were met
   * @param borrowed where nothing was met: what relatives lend for the works that may be meant
   * @param mine the machine it is for, with the others it could be for
   */
  public record Answer(
      Optional<RangeDetail> one, List<Range> others, List<RangeDetail> borrowed, Mine mine) {}

  /**
   * The reader's machines.
   *
   * @param chosen empty where there is none
   * @param all the last used first
   */
  public record Mine(Optional<Machine> chosen, List<Machine> all) {}

  /** One range per key among the matching trials, most voices first: the cheap core. */
  public List<Range> ranges(SearchQuery query) {
    return ranges(search.columns(query), query.filters(Facet.EFFECT));
  }

  /** The same where other words count as one: as a merge would leave them. */
  public List<Range> ranges(SearchQuery query, Vocabulary counting) {
    return ranges(search.columns(query).counting(counting), query.filters(Facet.EFFECT));
  }

  /**
   * @param effectAsked whether the search filters by effect
   */
  static List<Range> ranges(TrialColumns columns, boolean effectAsked) {
    return Group.split(columns).stream().map(group -> Range.of(group, effectAsked)).toList();
  }

  /**
   * The same with window, machines, camps, contrasts, borrowing and, with a machine, what it means
   * there.
   *
   * @param machine one of the actor's machines, or null
   * @throws EntryUnknown where the machine is not the actor's
   */
  public List<RangeDetail> details(SearchQuery query, Actor actor, UUID machine, boolean explain) {
    return details(new Ask(query, actor, machine, null, explain));
  }

  /**
   * The same, with a line spacing of the reader's own.
   *
   * @throws EntryUnknown where the machine is not the actor's
   */
  public List<RangeDetail> details(Ask ask) {
    OwnMachines own = OwnMachines.of(ask.actor(), machines, reports);
    Optional<Machine> machine =
        ask.machine() == null ? Optional.empty() : own.chosen(ask.machine(), List.of());
    Optional<Laser> mine = machine.map(Machine::laser);
    Wider wider = wider(ask, own.reader(machine));
    List<Group> met = ownLightFirst(groups.of(ask.query()), mine);
    List<RangeDetail> found = new ArrayList<>();
    for (int i = 0; i < met.size(); i++) {
      Group group = met.get(i);
      found.add(i < ConsensusLimits.DETAILED ? wider.full(group) : wider.core(group));
    }
    if (met.isEmpty()) {
      found.addAll(wider.alone());
    }
    return ask.explain() ? explained(found) : List.copyOf(found);
  }

  /**
   * What a search comes to: one answer where it meets one work, for the reader's machine where they
   * have one, else a list.
   *
   * @throws EntryUnknown where the machine is not the actor's
   */
  public Answer answer(Ask ask) {
    List<Group> all = met(ask.query());
    OwnMachines bench = OwnMachines.of(ask.actor(), machines, reports);
    Optional<Machine> machine = bench.chosen(ask.machine(), all.stream().map(Group::key).toList());
    Mine shown = new Mine(machine, bench.lastUsedFirst());
    Optional<Laser> mine = machine.map(Machine::laser);
    Wider wider = wider(ask, bench.reader(machine));
    List<Group> met = ownLightFirst(all, mine);
    if (met.isEmpty()) {
      return new Answer(Optional.empty(), List.of(), wider.alone(), shown);
    }
    List<Group> own =
        mine.map(laser -> met.stream().filter(g -> g.key().litBy(laser)).toList())
            .filter(lit -> !lit.isEmpty())
            .orElse(met);
    RangeKey first = own.get(0).key();
    if (!own.stream().allMatch(group -> group.key().sameWork(first))) {
      return new Answer(
          Optional.empty(), met.stream().map(Range::brief).toList(), List.of(), shown);
    }
    RangeDetail one = wider.full(own.get(0));
    return new Answer(
        Optional.of(ask.explain() ? explained(List.of(one)).get(0) : one),
        met.stream().skip(1).map(Range::brief).toList(),
        List.of(),
        shown);
  }

  /** Words the vocabulary knows mean just that, not every remark that mentions them. */
  private List<Group> met(SearchQuery query) {
    if (!query.text().isEmpty()) {
      SearchQuery read = TextReading.inFacets(query, catalog.snapshot().vocabulary());
      List<Group> meant = read.text().isEmpty() ? groups.of(read) : List.<Group>of();
      if (!meant.isEmpty()) {
        return meant;
      }
    }
    return groups.of(query);
  }

  /** The works that the trials of a search came out right with, most right trials first. */
  public List<KnownWork> known(SearchQuery query) {
    return KnownWork.of(groups.of(query));
  }

  /** How the machines of the club stand to each other, as of now. */
  public MachineFactors factors() {
    return factors.now();
  }

  /** The machines of who asks, the last used first and chosen. */
  public Mine machines(Actor actor) {
    OwnMachines bench = OwnMachines.of(actor, machines, reports);
    return new Mine(bench.chosen(null, List.of()), bench.lastUsedFirst());
  }

  /**
   * All about the work of a report of the actor's, for the machine it was made on: what to try next
   * after it. Empty where the report or its machine is not found.
   */
  public Optional<RangeDetail> after(ReportSnapshot report, Actor actor) {
    OwnMachines bench = OwnMachines.of(actor, machines, reports);
    Optional<Machine> machine =
        bench.lastUsedFirst().stream()
            .filter(own -> own.id().equals(report.machine().id()))
            .findFirst();
    SearchQuery query = WorkQuery.around(report);
    return machine.flatMap(
        own ->
            groups.of(query).stream()
                .filter(group -> group.holds(report.number()))
                .findFirst()
                .map(
                    group ->
                        wider(new Ask(query, actor, own.id(), null, false), bench.reader(machine))
                            .full(group)));
  }

  /**
   * All about work that is only planned with a laser; what relatives lend where nobody did it.
   *
   * @param machine of the actor's, or null
   * @return empty where nothing is known for such light, or a word of the work is not filed yet
   */
  public Optional<RangeDetail> planned(Work work, Laser laser, Actor actor, UUID machine) {
    Vocabulary vocabulary = catalog.snapshot().vocabulary();
    return WorkQuery.key(work, laser, vocabulary)
        .map(key -> new Ask(WorkQuery.of(key, vocabulary), actor, machine, null, false))
        .flatMap(
            ask ->
                details(ask).stream()
                    .filter(detail -> detail.range().key().litBy(laser))
                    .findFirst());
  }

  /**
   * What the other members say of work on a machine of the actor's.
   *
   * @param machine of the actor's, or null
   * @return empty where nobody did it with such light, or a word of the work is not filed yet
   */
  public Optional<OthersWindow> others(Work work, Laser laser, Actor actor, UUID machine) {
    Vocabulary vocabulary = catalog.snapshot().vocabulary();
    OwnMachines bench = OwnMachines.of(actor, machines, reports);
    Optional<Machine> own =
        bench.lastUsedFirst().stream().filter(found -> found.id().equals(machine)).findFirst();
    Reader reader = bench.reader(own);
    return WorkQuery.key(work, laser, vocabulary)
        .flatMap(
            key ->
                groups.of(WorkQuery.of(key, vocabulary)).stream()
                    .filter(group -> group.key().litBy(laser))
                    .findFirst())
        .map(group -> OthersWindow.without(group, reader.member()))
        .map(
            others ->
                OthersWindow.of(others, factors.now().onThisWork(reader.machine(), laser, others)));
  }

  /** Otherwise as they come, most voices first. */
  private static List<Group> ownLightFirst(List<Group> groups, Optional<Laser> mine) {
    List<Group> ordered = new ArrayList<>(groups);
    mine.ifPresent(laser -> ordered.sort(Comparator.comparing(group -> !group.key().litBy(laser))));
    return ordered;
  }

  private Wider wider(Ask ask, Reader reader) {
    return new Wider(search, groups, factors, catalog.snapshot(), ask, reader);
  }

  private List<RangeDetail> explained(List<RangeDetail> details) {
    Set<Long> numbers = new TreeSet<>();
    details.forEach(detail -> numbers.addAll(Explain.members(detail.range())));
    Map<Long, Members.Named> people = members.namedByNumber(numbers);
    return details.stream().map(detail -> detail.with(Explain.of(detail, people))).toList();
  }

  /**
   * Combinations beside each other.
   *
   * @throws IllegalArgumentException where there are fewer than two or more than four
   */
  public SideBySide compare(List<SearchQuery> queries) {
    if (queries.size() < ConsensusLimits.FEWEST_COMPARED
        || queries.size() > ConsensusLimits.MOST_COMPARED) {
      throw new IllegalArgumentException(queries.size() + " combinations");
    }
    return SideBySide.of(queries, queries.stream().map(this::cautioned).toList());
  }

  private List<RangeDetail> cautioned(SearchQuery query) {
    RangeWork work = new RangeWork(catalog.cautions(), null, null, query.filters(Facet.EFFECT));
    return Group.split(search.columns(query)).stream().map(work::core).toList();
  }
}
