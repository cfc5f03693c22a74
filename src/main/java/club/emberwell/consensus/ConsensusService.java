package club.emberwell.consensus;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.search.SearchService;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
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
  private final CatalogService catalog;
  private final Machines machines;
  private final Members members;

  ConsensusService(
      SearchService search, CatalogService catalog, Machines machines, Members members) {
    this.search = search;
    this.catalog = catalog;
    this.machines = machines;
    this.members = members;
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

  /** One range per key among the matching trials, most voices first: the cheap core. */
  public List<Range> ranges(SearchQuery query) {
    return ranges(search.columns(query));
  }

  static List<Range> ranges(TrialColumns columns) {
    return Group.split(columns).stream().map(group -> Range.of(group, false)).toList();
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
    Catalog now = catalog.snapshot();
    Optional<Machine> mine = mine(ask);
    RangeWork work = new RangeWork(now.cautions(), mine.map(Machine::laser), ask.spacingMm());
    List<Group> groups = Group.split(search.columns(ask.query()));
    Wider wider = new Wider(ask.query(), now);
    List<Group> anyColour = anyColour(ask.query(), groups, wider);
    List<RangeDetail> found = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      Group group = groups.get(i);
      found.add(
          i < ConsensusLimits.DETAILED ? full(work, group, anyColour, wider) : work.core(group));
    }
    if (groups.isEmpty()) {
      found.addAll(wider.alone(work));
    }
    return ask.explain() ? explained(found) : List.copyOf(found);
  }

  private Optional<Machine> mine(Ask ask) {
    if (ask.machine() == null) {
      return Optional.empty();
    }
    Optional<Machine> mine =
        ask.actor().signedIn()
            ? machines.find(ask.actor().memberId(), ask.machine())
            : Optional.empty();
    return Optional.of(mine.orElseThrow(() -> new EntryUnknown("machine")));
  }

  private static List<Group> anyColour(SearchQuery query, List<Group> groups, Wider wider) {
    return query.facets().containsKey(Facet.COLOUR.code())
        ? wider.groups(query.withFacet(Facet.COLOUR.code(), List.of()))
        : groups;
  }

  private static RangeDetail full(RangeWork work, Group group, List<Group> anyColour, Wider wider) {
    RangeDetail detail = work.full(group, RangeWork.find(anyColour, group.key()).orElse(group));
    return detail.range().counts().voices() < ConsensusLimits.BORROW_BELOW
        ? detail.with(wider.borrowing(group))
        : detail;
  }

  /** Wider searches of one request, each made once and only where it is needed. */
  private final class Wider {
    private final Map<SearchQuery, List<Group>> made = new HashMap<>();
    private final List<Relatives> relatives;

    Wider(SearchQuery query, Catalog now) {
      relatives = Relatives.of(query, now.vocabulary());
    }

    List<Group> groups(SearchQuery query) {
      return made.computeIfAbsent(query, q -> Group.split(search.columns(q)));
    }

    Optional<Borrowing> borrowing(Group group) {
      for (Relatives from : relatives) {
        Optional<Borrowing> found =
            RangeWork.find(groups(from.query()), group.key())
                .flatMap(wider -> Borrowing.of(Optional.of(group), wider, from.by(), from.words()));
        if (found.isPresent()) {
          return found;
        }
      }
      return Optional.empty();
    }

    List<RangeDetail> alone(RangeWork work) {
      List<RangeDetail> found = new ArrayList<>();
      Set<RangeKey> done = new HashSet<>();
      for (Relatives from : relatives) {
        for (Group wider : groups(from.query())) {
          if (found.size() < ConsensusLimits.BORROWED_ALONE && !done.contains(wider.key())) {
            Borrowing.of(Optional.empty(), wider, from.by(), from.words())
                .map(borrowing -> work.alone(wider, borrowing))
                .ifPresent(
                    detail -> {
                      done.add(wider.key());
                      found.add(detail);
                    });
          }
        }
      }
      return found;
    }
  }

  private List<RangeDetail> explained(List<RangeDetail> details) {
    Set<Long> numbers = new TreeSet<>();
    details.forEach(detail -> numbers.addAll(Explain.members(detail.range())));
    Map<Long, String> handles = members.labelsByNumber(numbers);
    return details.stream()
        .map(detail -> detail.with(Explain.of(detail, handles, Members.FORMER)))
        .toList();
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
    return SideBySide.of(queries, queries.stream().map(this::ranges).toList());
  }
}
