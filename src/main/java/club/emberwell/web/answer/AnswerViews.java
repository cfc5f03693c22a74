package club.emberwell.web.answer;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.Contrast;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.WorkQuery;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.answer.Whole;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Range;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportBrief;
import club.emberwell.report.ReportBriefs;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.answer.AnswerView.Folds;
import club.emberwell.web.answer.AnswerView.Form;
import club.emberwell.web.answer.AnswerView.Head;
import club.emberwell.web.answer.AnswerView.Others;
import club.emberwell.web.answer.AnswerView.Way;
import club.emberwell.web.answer.AnswerView.Wholes;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.plot.SpeedPlot;
import club.emberwell.web.range.MeasureText;
import club.emberwell.web.range.RangeView;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Composes the panel; reads what its dots and whole settings lead to in one statement. */
@ApplicationScoped
public class AnswerViews {
  private static final String FIND = "/";
  private static final String RANGE = "/range";

  /** The parameter that names a machine of the reader's. */
  public static final String MACHINE = "machine";

  private final ReportBriefs reports;
  private final ShownPhotos photos;
  private final CatalogService catalog;
  private final Machines machines;

  AnswerViews(ReportBriefs reports, ShownPhotos photos, CatalogService catalog, Machines machines) {
    this.reports = reports;
    this.photos = photos;
    this.catalog = catalog;
    this.machines = machines;
  }

  /** A machine that an address names; empty where it is none of the actor's. */
  public Optional<UUID> machine(String text, Actor actor) {
    try {
      return text == null || text.isBlank()
          ? Optional.empty()
          : machine(UUID.fromString(text.strip()), actor);
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  public Optional<UUID> machine(UUID id, Actor actor) {
    return id == null || !actor.signedIn()
        ? Optional.empty()
        : machines.find(actor.memberId(), id).map(Machine::id);
  }

  /** The works beside the one that is answered; its other lasers stand in its panel. */
  public static List<Range> otherWorks(ConsensusService.Answer found) {
    return found.others().stream()
        .filter(range -> found.one().filter(one -> sameWork(one, range)).isEmpty())
        .toList();
  }

  private static boolean sameWork(RangeDetail one, Range range) {
    return one.range().key().sameWork(range.key());
  }

  /** What a panel is made for. */
  private record Made(
      RangeDetail detail,
      ConsensusService.Answer found,
      SearchQuery query,
      Actor actor,
      Catalog now,
      Map<Long, ReportBrief> reports,
      Map<UUID, Photo> photos) {
    UnitPreferences units() {
      return actor.units();
    }

    Vocabulary vocabulary() {
      return now.vocabulary();
    }

    Optional<Answer> answer() {
      return detail.answer();
    }

    Optional<Machine> machine() {
      return found.mine().chosen();
    }

    MeasureText dose() {
      return new MeasureText(Range.doseMeasure(detail.range().key()), units());
    }
  }

  /** On the find page; several only where all is borrowed. */
  public List<AnswerView> onFind(ConsensusService.Answer found, SearchQuery query, Actor actor) {
    return all(found, query, actor, FIND);
  }

  /** The same on the range page. */
  public List<AnswerView> onRange(ConsensusService.Answer found, SearchQuery query, Actor actor) {
    return all(found, query, actor, RANGE);
  }

  /** Speed against power on the reader's machine; null where no dose may be carried over. */
  SpeedPlot speeds(RangeDetail one, OnMyMachine mine, Actor actor) {
    return SpeedPictures.of(
        mine,
        one.answer().flatMap(Answer::start),
        new MeasureText(Range.doseMeasure(one.range().key()), actor.units()),
        reports.live(mine.moved().stream().map(moved -> moved.from().made().report()).toList()));
  }

  private List<AnswerView> all(
      ConsensusService.Answer found, SearchQuery query, Actor actor, String page) {
    List<RangeDetail> details =
        Stream.concat(found.one().stream(), found.borrowed().stream()).toList();
    Set<Long> numbers = new HashSet<>();
    details.forEach(detail -> numbers.addAll(numbers(detail)));
    Map<Long, ReportBrief> briefs = reports.live(numbers);
    Map<UUID, Photo> first = photos.firstOf(shown(details, briefs));
    List<AnswerView> views = new ArrayList<>();
    for (RangeDetail detail : details) {
      Made made = new Made(detail, found, query, actor, catalog.snapshot(), briefs, first);
      views.add(of(made, page, "answer" + (views.isEmpty() ? "" : views.size())));
    }
    return views;
  }

  /** The reports whose whole settings are shown. */
  private static List<UUID> shown(List<RangeDetail> details, Map<Long, ReportBrief> briefs) {
    return details.stream()
        .flatMap(detail -> detail.answer().stream())
        .flatMap(answer -> answer.wholes().stream())
        .map(whole -> briefs.get(whole.made().report()))
        .filter(Objects::nonNull)
        .map(ReportBrief::id)
        .toList();
  }

  private static AnswerView of(Made made, String page, String id) {
    RangeDetail one = made.detail();
    Optional<Window> window = one.findings().map(RangeDetail.Findings::window);
    return new AnswerView(
        head(made, page, id),
        StartWords.of(one, made.machine(), made.actor(), made.reports()),
        EvidenceWords.of(one, made.machine()),
        window
            .filter(w -> !w.marks().isEmpty())
            .map(w -> DosePictures.of(w, start(one), times(one), made.dose(), made.reports()))
            .orElse(null),
        wholes(made),
        cautions(made),
        folds(made, page),
        others(made, page));
  }

  private static double times(RangeDetail one) {
    return one.answer().flatMap(Answer::factor).map(OnThisWork::times).orElse(1.0);
  }

  private static Set<Long> numbers(RangeDetail one) {
    Stream<Long> marks =
        one.findings().stream()
            .flatMap(findings -> DosePictures.marks(findings.window()).stream())
            .map(Window.Mark::report);
    Stream<Long> wholes =
        one.answer().stream()
            .flatMap(answer -> Stream.concat(answer.wholes().stream(), answer.right().stream()))
            .map(whole -> whole.made().report());
    Set<Long> numbers = new HashSet<>();
    Stream.concat(marks, wholes).forEach(numbers::add);
    return numbers;
  }

  /** What is tried next takes the place of the start; without a machine the middle is marked. */
  private static DosePictures.Start start(RangeDetail one) {
    Optional<Answer> answer = one.answer();
    return answer
        .flatMap(Answer::next)
        .map(next -> new DosePictures.Start("next", next.dose()))
        .or(
            () ->
                answer
                    .flatMap(Answer::start)
                    .map(start -> new DosePictures.Start("start", start.dose())))
        .or(() -> one.middle().map(middle -> new DosePictures.Start("middle", middle.dose())))
        .orElse(null);
  }

  private static Head head(Made made, String page, String id) {
    Range range = made.detail().range();
    Optional<Machine> machine = made.machine();
    return new Head(
        id,
        range.key().work().words(),
        range.key().process().label().toLowerCase(Locale.ROOT),
        machine.map(Machine::name).orElse(null),
        machine.map(m -> TrialText.laser(m.laser(), made.units())).orElse(range.key().laser()),
        made.found().mine().all().size() < 2
            ? null
            : new Form(
                page,
                // of the search, where facets and pages keep it
                page.equals(FIND) ? SearchQueryCodec.NEAR : MACHINE,
                QueryString.pairs(SearchQueryCodec.write(made.query().withNear(null).withPage(0))),
                made.found().mine().all().stream()
                    .map(
                        m ->
                            new Option(
                                m.id().toString(), m.name(), machine.filter(m::equals).isPresent()))
                    .toList()));
  }

  private static Wholes wholes(Made made) {
    boolean borrowed = made.detail().findings().isEmpty();
    List<AnswerView.Whole> list = new ArrayList<>();
    made.answer().map(Answer::wholes).orElse(List.of()).stream()
        .filter(whole -> made.reports().containsKey(whole.made().report()))
        .forEach(whole -> list.add(whole(made, whole, borrowed)));
    String machines =
        made.machine().isPresent() ? "Worked on machines like yours" : "Worked for members";
    return new Wholes(borrowed ? "Worked on something like it" : machines, list);
  }

  private static AnswerView.Whole whole(Made made, Whole whole, boolean borrowed) {
    ReportBrief report = made.reports().get(whole.made().report());
    MeasureText text = made.dose();
    String quality = whole.quality() == null ? "" : ", quality " + whole.quality();
    return new AnswerView.Whole(
        AnswerWords.whole(whole.settings(), made.units()),
        "/reports/" + report.id(),
        report.author() + " · " + TrialText.laser(report.laser(), made.units()),
        "right" + quality + " · " + text.told(whole.dose()) + " " + text.unit(),
        borrowed ? WorkText.of(report.work(), made.vocabulary(), made.units()) : null,
        made.actor().signedIn()
            ? "/reports/"
                + report.id()
                + "/repeat"
                + (whole.made().trial() == 0 ? "" : "?trial=" + whole.made().trial())
            : null,
        made.actor().signedIn()
            ? "/recipes/new?report=%s&trial=%d".formatted(report.id(), whole.made().trial())
            : null,
        made.photos().get(report.id()));
  }

  /** Of the work and of the words that were asked, whose bans stand above the panel already. */
  private static CautionsView cautions(Made made) {
    List<Caution> asked = QueryCautions.of(made.query(), made.now());
    Set<String> above =
        asked.stream()
            .map(Caution::rule)
            .filter(CautionRule::isBan)
            .map(CautionRule::id)
            .collect(Collectors.toSet());
    CautionsView all =
        CautionsView.of(
            Cautions.once(Stream.concat(asked.stream(), made.detail().cautions().stream())),
            made.vocabulary(),
            made.units());
    return new CautionsView(
        all.bans().stream().filter(ban -> !above.contains(ban.rule().id())).toList(),
        all.particular().cares(),
        all.particular().notes());
  }

  private static Folds folds(Made made, String page) {
    List<Contrast> contrasts =
        made.detail().findings().map(RangeDetail.Findings::contrasts).orElse(List.of());
    return new Folds(
        SettingLines.of(made.detail().range(), made.units()),
        contrasts.stream().filter(Contrast::clear).findFirst().map(Contrast::sentence).orElse(null),
        Stream.concat(
                contrasts.stream().filter(Contrast::clear).skip(1),
                contrasts.stream().filter(c -> !c.clear()))
            .map(Contrast::sentence)
            .toList(),
        page.equals(FIND) ? RANGE + "?" + SearchQueryCodec.write(made.query().withPage(0)) : null);
  }

  /** Other lasers that did the same; to a stranger also this one, to choose from. */
  private static Others others(Made made, String page) {
    Range here = made.detail().range();
    List<Range> lasers =
        made.found().others().stream().filter(r -> sameWork(made.detail(), r)).toList();
    boolean choose = made.machine().isEmpty() && !lasers.isEmpty();
    return new Others(
        choose,
        Stream.concat(choose ? Stream.of(here) : Stream.empty(), lasers.stream())
            .map(
                range ->
                    new Way(
                        LaserWords.of(range.key())
                            + " ("
                            + RangeView.counted(range.counts().voices(), "member", "members")
                            + ")",
                        page
                            + "?"
                            + SearchQueryCodec.write(
                                WorkQuery.of(made.query(), range.key(), made.vocabulary())
                                    .withPage(0))))
            .toList());
  }
}
