package club.emberwell.consensus;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.factor.KeptFactors;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Laser;
import club.emberwell.search.SearchService;
import club.emberwell.search.match.TextReading;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works groups out in full for one request, with the wider searches that takes: relatives to borrow
 * from and to compare with, looked for only where they are needed.
 */
final class Wider {
  private final SearchService search;
  private final KeptGroups groups;
  private final SearchQuery asked;
  private final Vocabulary vocabulary;
  private final long version;
  private final Laser mine;
  private final RangeWork work;
  private final Reader reader;
  private final KeptFactors factors;

  Wider(
      SearchService search,
      KeptGroups groups,
      KeptFactors factors,
      Catalog now,
      ConsensusService.Ask ask,
      Reader reader) {
    this.search = search;
    this.groups = groups;
    this.reader = reader;
    this.factors = factors;
    asked = ask.query();
    vocabulary = now.vocabulary();
    version = now.version();
    mine = reader.laser();
    work = new RangeWork(now.cautions(), reader, ask.spacingMm(), asked.filters(Facet.EFFECT));
  }

  RangeDetail core(Group group) {
    return work.core(group);
  }

  RangeDetail full(Group group) {
    return work.forReader(forAnybody(group), group, factor(group));
  }

  private Optional<OnThisWork> factor(Group group) {
    return reader.machine() == 0
        ? Optional.empty()
        : factors.now().onThisWork(reader.machine(), mine, group);
  }

  /** What does not depend on who asks. */
  private RangeDetail forAnybody(Group group) {
    return search.kept(
        asked,
        RangeDetail.class,
        List.of(group.key(), version),
        () -> workedOut(group),
        detail -> detail.range().counts().trials());
  }

  private RangeDetail workedOut(Group group) {
    List<Relatives> relatives = Relatives.of(group.key(), vocabulary);
    Map<Facet, List<Group>> beside = new LinkedHashMap<>();
    relatives.forEach(
        from -> beside.put(from.by(), from.beside(group.key(), groups.of(from.query()))));
    RangeDetail detail = work.full(group, beside);
    return detail.range().counts().voices() < ConsensusLimits.BORROW_BELOW
        ? detail.with(
            relatives.stream()
                .flatMap(
                    from ->
                        Borrowing.of(
                            Optional.of(group),
                            group.key(),
                            beside.get(from.by()),
                            from.by(),
                            from.words())
                            .stream())
                .findFirst())
        : detail;
  }

  List<RangeDetail> alone() {
    SearchQuery read = TextReading.inFacets(asked, vocabulary);
    Map<RangeKey, RangeDetail> found = new LinkedHashMap<>();
    for (Relatives from : Relatives.of(read, vocabulary)) {
      List<Group> met = groups.of(from.query());
      for (RangeKey key : from.wanted(read, met, vocabulary)) {
        if (!found.containsKey(key)) {
          List<Group> lenders = from.beside(key, met);
          Borrowing.of(Optional.empty(), key, lenders, from.by(), from.words())
              .ifPresent(
                  borrowed -> found.put(key, work.alone(key, lenders, borrowed, this::factor)));
        }
      }
    }
    return ownLight(found.values()).stream().limit(ConsensusLimits.BORROWED_ALONE).toList();
  }

  /** For the reader's machine alone where anything is known for its light. */
  private List<RangeDetail> ownLight(Collection<RangeDetail> found) {
    List<RangeDetail> own =
        found.stream().filter(detail -> mine != null && detail.range().key().litBy(mine)).toList();
    return own.isEmpty() ? List.copyOf(found) : own;
  }
}
