package club.emberwell.web.card;

import club.emberwell.access.PublicUrl;
import club.emberwell.card.JobCard;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.fixture.Positions;
import club.emberwell.laser.Setting;
import club.emberwell.laser.safety.Coverage.Cover;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.tag.QrCode;
import club.emberwell.web.card.CardView.Check;
import club.emberwell.web.card.CardView.EyesView;
import club.emberwell.web.card.CardView.Fact;
import club.emberwell.web.card.CardView.Facts;
import club.emberwell.web.card.CardView.Lying;
import club.emberwell.web.card.CardView.Pair;
import club.emberwell.web.card.CardView.Photo;
import club.emberwell.web.card.CardView.Sheet;
import club.emberwell.web.card.CardView.Told;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.report.ReportPage.Row;
import club.emberwell.web.report.SettingRows;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Puts job cards into words, in the reader's units. */
@ApplicationScoped
class CardViews {
  /** Pairs of glasses that stand on a card: one takes a good one, not all. */
  private static final int PAIRS = 4;

  private final CatalogService catalog;
  private final PublicUrl url;

  CardViews(CatalogService catalog, PublicUrl url) {
    this.catalog = catalog;
    this.url = url;
  }

  /**
   * A card for a page.
   *
   * @param path of the page; with its revision it is what the square holds
   * @param photo path of the fixture's photo for this reader
   */
  CardView of(JobCard card, UnitPreferences reader, String path, String photo) {
    Catalog now = catalog.snapshot();
    List<Check> before =
        card.before().stream()
            .map(line -> new Check(line.sentence(), line.standing() == null))
            .toList();
    List<Fact> blank = blank(card.work(), now, reader);
    List<Fact> settings = settings(card, reader);
    Lying lies = card.lies() == null ? null : lies(card.lies(), reader, photo);
    String notes = card.work().typed(WorkProperty.NOTES);
    Told told = new Told(card.past().revision().written().job().lines(), notes);
    CautionsView cautions = CautionsView.of(card.cautions(), now.vocabulary(), reader);
    EyesView eyes = eyes(card.eyes(), reader);
    return new CardView(
        head(card, reader),
        before,
        new Facts(blank, settings),
        lies,
        told,
        cautions,
        eyes,
        new Sheet(
            QrCode.of(url.of(path + "?revision=" + card.version())),
            CardPaper.of(
                new CardPaper.Parts(
                    before, List.of(blank, settings), lies, told, cautions, eyes))));
  }

  private static CardView.Head head(JobCard card, UnitPreferences reader) {
    String laser = TrialText.laser(card.past().read().laser(), reader);
    return new CardView.Head(
        card.title(),
        card.version(),
        card.past().recipe().version(),
        card.past().revision().at(),
        card.work().process().label(),
        card.eyes().machine() == null ? laser : card.eyes().machine().name() + " (" + laser + ")",
        card.room() == null ? null : card.room().name());
  }

  private static List<Fact> blank(Work work, Catalog now, UnitPreferences reader) {
    return Stream.of(WorkProperty.values())
        .filter(property -> property != WorkProperty.NOTES && work.values().containsKey(property))
        .map(
            property ->
                new Fact(property.label(), WorkText.of(work, property, now.vocabulary(), reader)))
        .toList();
  }

  /** Whether the focus was written down is said in any case. */
  private static List<Fact> settings(JobCard card, UnitPreferences reader) {
    List<Row> rows =
        SettingRows.of(
            card.past().revision().written().settings(), card.settings().settings(), reader);
    List<Fact> facts = new ArrayList<>();
    rows.forEach(
        row -> facts.add(new Fact(row.label(), row.read().isEmpty() ? row.written() : row.read())));
    if (!card.settings().settings().values().containsKey(Setting.FOCUS_OFFSET)) {
      facts.add(new Fact("Focus", "no offset written down: in focus on the surface, or ask"));
    }
    return facts;
  }

  private static Lying lies(JobCard.Lying lies, UnitPreferences reader, String photo) {
    return new Lying(
        lies.fixture().title(),
        lies.fixture().written().place(),
        position(lies.fixture().positions(), lies.place(), reader),
        lies.photo() == null
            ? null
            : new Photo(photo, lies.photo().width(), lies.photo().height()));
  }

  private static String position(Positions all, Positions.Place place, UnitPreferences reader) {
    if (place == null) {
      return all.pieces() == 1
          ? "1 piece in one load"
          : "%d pieces in one load, from position 1 row by row".formatted(all.pieces());
    }
    return "Position %d: column %d, row %d; its middle %s from the left, %s from the back"
        .formatted(
            place.number(),
            place.column(),
            place.row(),
            QuantityPrinter.print(place.x(), QuantityKind.LENGTH, reader),
            QuantityPrinter.print(place.y(), QuantityKind.LENGTH, reader));
  }

  private static EyesView eyes(JobCard.Eyes eyes, UnitPreferences reader) {
    EyeProtection known = eyes.protection();
    if (known == null) {
      return new EyesView(
          List.of(),
          0,
          "The machine was removed, so nothing is calculated.",
          List.of(),
          EyeLimits.CLOSING);
    }
    List<Pair> pairs =
        known.fits().stream()
            .sorted(
                Comparator.comparing(fit -> fit.coverage().verdict(), Comparator.reverseOrder()))
            .map(
                fit ->
                    new Pair(
                        fit.glasses().name(),
                        fit.coverage().verdict().label(),
                        fit.coverage().because(),
                        fit.coverage().verdict() == Cover.COVERED))
            .toList();
    Double least = known.minima().density();
    return new EyesView(
        pairs.stream().limit(PAIRS).toList(),
        Math.max(0, pairs.size() - PAIRS),
        least == null
            ? "No optical density can be told for this laser."
            : "At least OD %s at %s is calculated."
                .formatted(
                    QuantityPrinter.number(least, reader.style()),
                    QuantityPrinter.print(
                        known.minima().beam().nm(), QuantityKind.WAVELENGTH, reader)),
        known.warnings(),
        EyeLimits.CLOSING);
  }
}
