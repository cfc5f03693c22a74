import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

/**
 * Writes the reports of the invented club from a plausible model with a fixed seed. Needs only a
 * JDK: {@code java seed-scenario/generator/Generate.java seed-scenario}. Nothing here was measured;
 * see the README beside it.
 *
 * <p>The model: every combination of material, coating and process has a window of ln dose inside
 * which a result is likely right. A colour shifts it, a member's machine shifts it (sd 0.16), air
 * assist and one supplier's batch shift it where the table says so. A member aims at the middle of
 * what they believe, misses by their care, rounds to numbers people type, and judges with noise.
 * A supplier's lot shifts the window by the factor of its delivery; the member aims along with it.
 *
 * <p>What a club is beyond its numbers (hours, remarks, pictures, comments) is drawn apart from
 * them, so that a new remark changes no result.
 */
public final class Generate {
  static final long SEED = 20_260_114L;
  static final LocalDate FIRST_DAY = LocalDate.of(2025, 9, 1);
  static final int DAYS = 440;
  static final double MACHINE_SPREAD = 0.16;
  static final double JUDGEMENT_NOISE = 0.13;

  record Member(String handle, String style, int reports, double care) {}

  record Machine(
      String owner, String name, String source, String wavelength, double watts, String ratedText, String motion,
      String regime, String lens, String beam, double beamUm, double maxSpeed, String speedText, boolean setsPulse) {}

  record Combo(
      String source, String[] material, String[] coating, String[] colours, String process, double low, double high,
      String[] thickness, double airFactor, double batchFactor, int weight, List<Becomes> becomes, List<String> tags) {}

  /** A delivery and how much more dose it wants. */
  record Lot(String tag, String name, String supplier, LocalDate from, LocalDate until, double factor) {
    boolean isBurned(LocalDate day) {
      return !day.isBefore(from) && day.isBefore(until);
    }
  }

  /** A colour that a mark takes up to this share of the window, and how people spell it. */
  record Becomes(double upTo, String... spellings) {}

  /**
   * A plain report as it was drawn.
   *
   * @param line its place in the file
   * @param work what must be the same in a repeat of it
   * @param position where its dose lies in the whole window: -1 the least that is right, 1 the most
   */
  record Made(
      int line, String by, LocalDateTime at, Combo combo, String work, double lnDose, double position, String effect,
      Circumstances now) {}

  /** A grid as it was drawn, for its picture: the positions of its trials. */
  record MadeGrid(int line, Combo combo, Circumstances now, int columns, List<Double> positions, String plan, LocalDateTime at) {}

  /**
   * A sentence of {@code remarks.txt}.
   *
   * @param kind a space for a remark, + for what is added to one, > for a comment, = for a caption
   * @param tags all of them must be told of a report
   */
  record Sentence(char kind, Set<String> tags, String text) {}

  /** One that can be drawn from without moving on. */
  static final class Dice extends Random {
    private long state;

    Dice(long seed) {
      super(0);
      setSeed(seed);
    }

    @Override
    public void setSeed(long seed) {
      super.setSeed(seed);
      state = (seed ^ 0x5DEECE66DL) & ((1L << 48) - 1);
    }

    @Override
    protected int next(int bits) {
      state = (state * 0x5DEECE66DL + 0xBL) & ((1L << 48) - 1);
      return (int) (state >>> (48 - bits));
    }
  }

  Dice random = new Dice(SEED);

  /** Draws what was added later, so that the earlier reports stay as they were. */
  final Random more = new Random(SEED + 1);

  final Path folder;
  final List<Member> members = new ArrayList<>();
  final List<Machine> machines = new ArrayList<>();
  final List<Combo> combos = new ArrayList<>();
  final List<String> lines = new ArrayList<>();
  final List<Made> made = new ArrayList<>();
  final List<MadeGrid> madeGrids = new ArrayList<>();
  final List<Lot> lots = new ArrayList<>();
  final List<Sentence> sentences = new ArrayList<>();
  final List<String> comments = new ArrayList<>();
  final double[] calendar = calendar();
  final List<String> stock = new ArrayList<>();
  int written;
  int kept;

  Generate(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) throws IOException {
    Generate generate = new Generate(Path.of(args.length == 0 ? "seed-scenario" : args[0]));
    generate.read();
    generate.singles();
    generate.grids();
    generate.oddities();
    generate.colours();
    generate.repeats();
    generate.remarks();
    generate.pictures();
    generate.comments();
    generate.stock();
    generate.save();
  }

  // ---- what is written by hand and read here

  void read() throws IOException {
    for (String[] cell : table("members.csv")) {
      members.add(new Member(cell[0], cell[3], Integer.parseInt(cell[4]), Double.parseDouble(cell[5])));
    }
    for (String[] cell : table("machines.csv")) {
      machines.add(new Machine(cell[0], cell[1], cell[2], cell[3], Double.parseDouble(cell[4].replaceAll("[^0-9.]", ""))
          / (cell[4].contains("mW") ? 1000 : 1), cell[4], cell[5], cell[6], cell[7], cell[8],
          Double.parseDouble(cell[9]), Double.parseDouble(cell[10]), cell[11], cell[12].equals("yes")));
    }
    for (String[] cell : table("generator/model.csv")) {
      combos.add(new Combo(cell[0], words(cell[1]), words(cell[2]), words(cell[3]), cell[4], Double.parseDouble(cell[5]),
          Double.parseDouble(cell[6]), words(cell[7]), Double.parseDouble(cell[8]), Double.parseDouble(cell[9]),
          Integer.parseInt(cell[10]), becomes(cell[11]), List.of(cell[12].split(" "))));
    }
    for (String[] cell : table("generator/lots.csv")) {
      lots.add(new Lot(cell[0], cell[1], cell[2], LocalDate.parse(cell[3]), LocalDate.parse(cell[4]), Double.parseDouble(cell[5])));
    }
    for (String line : Files.readAllLines(folder.resolve("generator/remarks.txt"), StandardCharsets.UTF_8)) {
      if (!line.isBlank() && !line.startsWith("#")) {
        boolean plain = "+>=".indexOf(line.charAt(0)) < 0;
        String[] parts = (plain ? line : line.substring(1)).strip().split(": ", 2);
        sentences.add(new Sentence(plain ? ' ' : line.charAt(0), Set.of(parts[0].split(" ")), parts[1]));
      }
    }
  }

  static List<Becomes> becomes(String cell) {
    List<Becomes> all = new ArrayList<>();
    for (String one : words(cell)) {
      String[] parts = one.split("=");
      all.add(new Becomes(parts.length == 1 ? 1 : Double.parseDouble(parts[1]), parts[0].split("/")));
    }
    return all;
  }

  List<String[]> table(String file) throws IOException {
    List<String[]> rows = new ArrayList<>();
    boolean header = true;
    for (String line : Files.readAllLines(folder.resolve(file), StandardCharsets.UTF_8)) {
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      if (!header) {
        rows.add(line.split(";", -1));
      }
      header = false;
    }
    return rows;
  }

  static String[] words(String cell) {
    return cell.isBlank() ? new String[0] : cell.split("\\|");
  }

  // ---- plain reports

  void singles() {
    for (Member member : members) {
      List<Machine> own = machines.stream().filter(m -> m.owner().equals(member.handle())).toList();
      for (int i = 0; i < member.reports() && !own.isEmpty(); i++) {
        Machine machine = own.get(random.nextInt(own.size()));
        List<Combo> fit = combos.stream().filter(c -> c.source().equals(machine.source())).toList();
        if (fit.isEmpty()) {
          continue;
        }
        Combo combo = weighted(fit);
        int day = random.nextInt(DAYS);
        report(member, machine, combo, day, circumstances(member, machine, combo));
      }
    }
  }

  Combo weighted(List<Combo> fit) {
    int at = random.nextInt(fit.stream().mapToInt(Combo::weight).sum());
    for (Combo combo : fit) {
      at -= combo.weight();
      if (at < 0) {
        return combo;
      }
    }
    throw new IllegalStateException("weights do not add up");
  }

  void report(Member member, Machine machine, Combo combo, int day, Circumstances now) {
    double lnDose = now.middle + now.miss * (random.nextGaussian() * member.care() + (random.nextInt(4) == 0 ? random.nextGaussian() * 0.5 : 0));
    LocalDateTime at = at(member, day, now);
    name(now, combo, at.toLocalDate());
    long before = random.state;
    Typed typed = settings(member, machine, combo, lnDose, now);
    String effect = effect(typed.lnDose(), now);
    double share = (typed.lnDose() - now.low) / (now.high - now.low);
    double position = 2 * (typed.lnDose() - now.least) / (now.most - now.least) - 1;
    if (now.became == null) {
      now.became = became(combo, share);
    }
    if (now.drift != 0) {
      long after = random.state;
      random.state = before;
      typed = settings(member, machine, combo, lnDose + now.drift, now);
      random.state = after;
    }
    StringBuilder json = open(member, machine, combo, at, now);
    json.append(",\"settings\":").append(typed.json());
    json.append(judgement(effect, combo));
    // an earlier edition drew its remark here
    if (random.nextInt(effect.equals("right") ? 7 : 4) >= 0) {
      random.nextInt(100);
    }
    now.machine = machine;
    String work = now.colour + "/" + now.became + "/" + value(json, "thickness");
    made.add(new Made(lines.size(), member.handle(), at, combo, work, typed.lnDose(), position, effect, now));
    lines.add(json.append('}').toString());
  }

  static String value(CharSequence json, String name) {
    return json.toString().replaceFirst(".*\"" + name + "\":\"([^\"]*)\".*|.*", "$1");
  }

  /** What shifts the window for one report. */
  final class Circumstances {
    double low;
    double high;
    double middle;
    Boolean air;
    String colour;
    String lot;
    String controller;
    String became;
    /** A colour is told by eye more surely than a depth, and its steps are narrower. */
    double miss = 1;

    /** The whole window, where {@code low} to {@code high} is one colour of it. */
    double least;

    double most;

    /** What the lot adds to ln dose; the batch of the table is in the window already. */
    double drift;

    Boolean laterBatch;
    String namedLot;
    double wants = 1;
    String supplier;
    String base;
    Machine machine;
  }

  /** The colour at a share of the window; some say nothing of it. */
  String became(Combo combo, double share) {
    for (Becomes colour : combo.becomes()) {
      if (share < colour.upTo() || colour.upTo() == 1) {
        return more.nextInt(100) < 12 ? null : spellLater(colour.spellings());
      }
    }
    return null;
  }

  /** Leaves the part of the window in which a mark takes one colour, which the member is after. */
  void aim(Circumstances now, Combo combo, int colour) {
    double from = colour == 0 ? 0 : combo.becomes().get(colour - 1).upTo();
    double range = now.high - now.low;
    now.high = now.low + combo.becomes().get(colour).upTo() * range;
    now.low += from * range;
    now.middle = (now.low + now.high) / 2;
    now.miss = 0.4;
    now.became = spellLater(combo.becomes().get(colour).spellings());
  }

  String spellLater(String[] spellings) {
    return spellings[more.nextInt(100) < 70 ? 0 : more.nextInt(spellings.length)];
  }

  Circumstances circumstances(Member member, Machine machine, Combo combo) {
    Circumstances now = new Circumstances();
    double shift = new Random(machine.name().hashCode() * 31L + machine.owner().hashCode()).nextGaussian() * MACHINE_SPREAD;
    if (member.reports() > 200) {
      shift += 0.22;
    }
    boolean airFits = !combo.source().equals("fibre") && !combo.source().equals("uv") && !combo.source().equals("green");
    now.air = airFits && random.nextInt(10) < 8 ? random.nextInt(100) < 62 : null;
    if (Boolean.FALSE.equals(now.air)) {
      shift += Math.log(combo.airFactor());
    }
    if (combo.batchFactor() != 1) {
      boolean later = random.nextInt(100) < 40;
      now.laterBatch = later;
      now.lot = later ? "Tidewater 26-07" : "Tidewater 25-11";
      shift += later ? Math.log(combo.batchFactor()) : 0;
    } else if (random.nextInt(100) < 12) {
      now.lot = List.of("Marl & Finch 0312", "Osier Blanks A7", "Tidewater 25-11", "offcut bin").get(random.nextInt(4));
    }
    if (combo.colours().length > 0) {
      String[] cell = combo.colours()[random.nextInt(combo.colours().length)].split("=");
      shift += Math.log(Double.parseDouble(cell[1]));
      String[] spellings = cell[0].split("/");
      now.base = spellings[0];
      now.colour = spellings[random.nextInt(100) < 60 ? 0 : random.nextInt(spellings.length)];
    }
    now.controller = random.nextInt(100) < 30 ? List.of("3.9", "4.1", "4.2", "4.2.1").get(random.nextInt(4)) : null;
    now.low = Math.log(combo.low()) + shift;
    now.high = Math.log(combo.high()) + shift;
    now.middle = (now.low + now.high) / 2;
    now.least = now.low;
    now.most = now.high;
    return now;
  }

  // ---- when: evenings, weekends and seasons, drawn apart from the results

  /** How busy the club is up to each day, from 0 to {@link #DAYS}: keeps the order of what was drawn. */
  static double[] calendar() {
    double[] upTo = new double[DAYS + 1];
    for (int day = 0; day < DAYS; day++) {
      upTo[day + 1] = upTo[day] + busy(FIRST_DAY.plusDays(day));
    }
    return Arrays.stream(upTo).map(sum -> sum * DAYS / upTo[DAYS]).toArray();
  }

  static boolean within(LocalDate day, String from, String to) {
    MonthDay at = MonthDay.from(day);
    return !at.isBefore(MonthDay.parse("--" + from)) && !at.isAfter(MonthDay.parse("--" + to));
  }

  static boolean isQuiet(LocalDate day) {
    return within(day, "12-24", "12-26") || day.equals(LocalDate.of(2026, 4, 3)) || day.equals(LocalDate.of(2026, 4, 5));
  }

  static double busy(LocalDate day) {
    double week = switch (day.getDayOfWeek()) {
      case SATURDAY -> 2.1;
      case SUNDAY -> 1.8;
      case FRIDAY -> 1;
      default -> 0.75;
    };
    double season = isQuiet(day) ? 0.08 : within(day, "12-27", "12-31") || within(day, "01-01", "01-02") ? 0.3
        : within(day, "11-14", "12-18") ? 2 : within(day, "12-19", "12-23") ? 1.1 : within(day, "10-10", "11-13") ? 1.4
        : within(day, "05-02", "06-14") ? 1.6 : within(day, "08-01", "08-24") ? 0.4 : within(day, "07-10", "07-31") ? 0.6
        : within(day, "01-03", "02-20") ? 0.7 : 1;
    return week * season;
  }

  /** The day of the calendar that is as far on as the drawn one, and an hour at which this member has time. */
  LocalDateTime at(Member member, int drawn, Circumstances now) {
    Random life = life(4);
    double place = drawn + life.nextDouble();
    if (now.laterBatch != null) {
      // the later batch is not there before it was delivered, and of the earlier one little is left
      place = now.laterBatch ? busyBy(LocalDate.of(2026, 7, 7)) + place / DAYS * (DAYS - busyBy(LocalDate.of(2026, 7, 7)))
          : place / DAYS * busyBy(LocalDate.of(2026, 8, 9));
    }
    if (member.handle().equals("newcomer-lin")) {
      place = busyBy(LocalDate.of(2026, 9, 13)) + place / DAYS * (DAYS - busyBy(LocalDate.of(2026, 9, 13)));
    }
    int day = 0;
    while (day < DAYS - 1 && calendar[day + 1] <= place) {
      day++;
    }
    LocalDate date = FIRST_DAY.plusDays(day);
    if (member.handle().equals("larchling") && date.getDayOfWeek().getValue() > 5) {
      date = date.with(DayOfWeek.FRIDAY); // a school
    }
    return date.atTime(hour(member, date, life), life.nextInt(60), life.nextInt(60));
  }

  double busyBy(LocalDate day) {
    return calendar[(int) (day.toEpochDay() - FIRST_DAY.toEpochDay())];
  }

  static final Set<String> BY_DAY = Set.of("emberfox", "jigwright", "pinwright", "slatewing", "larchling");

  static int hour(Member member, LocalDate date, Random life) {
    if (date.getDayOfWeek().getValue() > 5) {
      return life.nextInt(3) == 0 ? 17 + life.nextInt(5) : 9 + life.nextInt(8);
    }
    if (BY_DAY.contains(member.handle()) && life.nextInt(10) < 7) {
      return 8 + life.nextInt(member.handle().equals("larchling") ? 5 : 9);
    }
    return life.nextInt(10) == 0 ? 12 : 17 + (life.nextInt(6) + life.nextInt(5)) / 2;
  }

  /** Chance of one report alone, whatever else is added to the club. */
  Random life(int what) {
    return new Random(SEED * 31 + what * 1_000_003L + written * 7919L);
  }

  /** Which delivery it was, where a member says so. */
  void name(Circumstances now, Combo combo, LocalDate day) {
    Random life = life(5);
    if (now.laterBatch != null) {
      lots.stream()
          .filter(lot -> lot.name().startsWith("Tidewater") && lot.tag().equals("powder"))
          .filter(lot -> now.laterBatch ? lot.factor() > 1 : lot.factor() == 1 && (lot.isBurned(day) || lot.name().endsWith("25-11")))
          .findFirst()
          .ifPresent(lot -> named(now, lot, life));
      return;
    }
    List<Lot> burned = lots.stream().filter(lot -> combo.tags().contains(lot.tag()) && lot.isBurned(day)).toList();
    if (!burned.isEmpty() && life.nextInt(100) < 42) {
      Lot lot = burned.get(life.nextInt(burned.size()));
      named(now, lot, life);
      now.drift = Math.log(lot.factor());
    } else if (combo.tags().contains("ply") && life.nextInt(100) < 8) {
      now.namedLot = "offcut bin";
    }
  }

  static void named(Circumstances now, Lot lot, Random life) {
    now.namedLot = lot.name();
    now.wants = lot.factor();
    now.supplier = life.nextInt(100) < 70 ? lot.supplier() : null;
  }

  String effect(double lnDose, Circumstances now) {
    double x = lnDose + logistic() * JUDGEMENT_NOISE * now.miss;
    return x < now.low ? "too little" : x > now.high ? "too much" : "right";
  }

  double logistic() {
    double u = Math.min(1 - 1e-9, Math.max(1e-9, random.nextDouble()));
    return Math.log(u / (1 - u));
  }

  // ---- settings as a person types them

  record Typed(String json, double lnDose) {}

  static boolean line(String process) {
    return process.equals("cut") || process.equals("score");
  }

  Typed settings(Member member, Machine machine, Combo combo, double lnDose, Circumstances now) {
    double dose = Math.exp(lnDose);
    boolean line = line(combo.process());
    double spacing = line ? 1 : pick(machine.beamUm() < 60 ? new double[] {0.02, 0.03, 0.04, 0.05} : new double[] {0.08, 0.1, 0.1, 0.127});
    int passes = line && random.nextInt(3) == 0 ? 2 : combo.process().equals("deep engraving") ? 5 + random.nextInt(4) * 5 : 1;
    double share = pick(new double[] {0.2, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 1.0});
    double speed = speedFor(machine, dose, spacing, passes, share);
    for (int tries = 0; tries < 12 && (speed > machine.maxSpeed() || speed < 1); tries++) {
      share = speed > machine.maxSpeed() ? share * machine.maxSpeed() / speed * 0.9 : Math.min(1, share * 2);
      if (speed < 1) {
        passes++;
      }
      speed = speedFor(machine, dose, spacing, passes, share);
    }
    double percent = Math.max(1, Math.round(share * 100));
    speed = speedFor(machine, dose, spacing, passes, percent / 100);
    Written v = speed(member.style(), speed);
    Written p = power(member.style(), percent, machine.watts());
    StringBuilder json = new StringBuilder("{\"power\":").append(text(p.text)).append(",\"speed\":").append(text(v.text));
    double reached = p.value * passes / v.value;
    if (!line) {
      Written h = spacing(member.style(), spacing);
      json.append(",\"lineSpacing\":").append(text(h.text));
      reached /= h.value;
    }
    if (passes > 1 || random.nextInt(4) == 0) {
      json.append(",\"passes\":").append(passes);
    }
    pulses(json, machine);
    if (random.nextInt(9) == 0) {
      json.append(",\"focusOffset\":").append(text(pickText("+2 mm", "-1 mm", "0.5 mm", "0 mm", "−1.5 mm", "1/16 in")));
    }
    if (now.air != null) {
      json.append(",\"airAssist\":").append(now.air);
    }
    if (!line && random.nextInt(3) == 0) {
      json.append(",\"direction\":").append(text(pickText("two-way", "two-way", "one-way")));
    }
    return new Typed(json.append('}').toString(), Math.log(reached));
  }

  static double speedFor(Machine machine, double dose, double spacing, int passes, double share) {
    return machine.watts() * share * passes / (dose * spacing);
  }

  void pulses(StringBuilder json, Machine machine) {
    if (machine.regime().equals("cw")) {
      return;
    }
    double kilohertz = machine.source().equals("fibre") ? pick(new double[] {20, 30, 40, 45, 60, 80}) : pick(new double[] {30, 40, 50, 80});
    json.append(",\"repetitionRate\":").append(text(pickText(tidy(kilohertz) + " kHz", tidy(kilohertz) + "khz", tidy(kilohertz * 1000) + " Hz")));
    if (machine.setsPulse()) {
      double ns = pick(new double[] {20, 60, 100, 200, 200, 350});
      json.append(",\"pulseDuration\":").append(text(pickText(tidy(ns) + " ns", tidy(ns) + "ns", tidy(ns / 1000) + " µs")));
    }
  }

  /** A text and the canonical value it stands for. */
  record Written(String text, double value) {}

  Written speed(String style, double mmPerSecond) {
    switch (style) {
      case "per-minute" -> {
        double value = Math.max(10, round(mmPerSecond * 60, mmPerSecond * 60 > 1000 ? 50 : 10));
        return new Written(tidy(value) + pickText(" mm/min", "mm/min", " mm per minute"), value / 60);
      }
      case "inch" -> {
        double value = mmPerSecond / 25.4 < 3 ? Math.max(0.05, round(mmPerSecond / 25.4, 0.05)) : round(mmPerSecond / 25.4, 0.5);
        return new Written(tidy(value) + pickText(" in/s", " ips", " inches per second"), value * 25.4);
      }
      case "inch-minute" -> {
        double value = Math.max(1, round(mmPerSecond / 25.4 * 60, 1));
        return new Written(tidy(value) + pickText(" in/min", " ipm"), value * 25.4 / 60);
      }
      case "comma" -> {
        double value = mmPerSecond < 20 ? Math.max(0.5, round(mmPerSecond, 0.5)) : round(mmPerSecond, 5);
        return new Written(tidy(value).replace('.', ',') + pickText(" mm/s", "mm/s"), value);
      }
      case "metre" -> {
        double value = Math.max(0.05, round(mmPerSecond * 0.06, 0.05));
        return new Written(tidy(value) + " m/min", value / 0.06);
      }
      default -> {
        double value = mmPerSecond < 20 ? Math.max(0.5, round(mmPerSecond, 0.5)) : round(mmPerSecond, mmPerSecond > 200 ? 25 : 5);
        return new Written(tidy(value) + pickText(" mm/s", " mm/s", "mm/s", " mm/sec"), value);
      }
    }
  }

  Written power(String style, double percent, double rated) {
    if (style.equals("watt") || random.nextInt(12) == 0) {
      double watts = rated * percent / 100;
      double value = watts < 10 ? Math.max(0.1, round(watts, 0.1)) : round(watts, 0.5);
      return new Written(tidy(value) + pickText(" W", "W", " watts"), value);
    }
    return new Written(tidy(percent) + pickText(" %", "%", " percent"), rated * percent / 100);
  }

  Written spacing(String style, double mm) {
    switch (style) {
      case "inch", "inch-minute" -> {
        double dpi = round(25.4 / mm, mm > 0.06 ? 1 : 10);
        return new Written(tidy(dpi) + pickText(" dpi", " lpi", "dpi", " lines per inch"), 25.4 / dpi);
      }
      case "comma" -> {
        return new Written(tidy(mm).replace('.', ',') + " mm", mm);
      }
      case "per-minute" -> {
        double perMm = round(1 / mm, mm > 0.06 ? 0.5 : 1);
        return random.nextInt(3) == 0 ? new Written(tidy(perMm) + " lines/mm", 1 / perMm) : new Written(tidy(mm) + " mm", mm);
      }
      case "metre" -> {
        return new Written(tidy(Math.round(mm * 1000)) + pickText(" um", " µm", " microns"), Math.round(mm * 1000) / 1000.0);
      }
      default -> {
        return new Written(tidy(mm) + pickText(" mm", "mm"), mm);
      }
    }
  }

  // ---- the rest of a report

  StringBuilder open(Member member, Machine machine, Combo combo, LocalDateTime at, Circumstances now) {
    StringBuilder json = new StringBuilder("{\"id\":").append(text(id()));
    json.append(",\"by\":").append(text(member.handle()));
    json.append(",\"at\":").append(text(stamp(at)));
    json.append(",\"machine\":").append(text(machine.name()));
    String material = spell(combo.material());
    String coating = combo.coating().length > 0 ? spell(combo.coating()) : null;
    StringBuilder finish = new StringBuilder();
    if (coating != null) {
      finish.append(",\"coating\":").append(text(coating));
    }
    maybe(finish, "colour", now.colour, 100);
    String thickness = null;
    if (combo.thickness().length > 0 && (line(combo.process()) || random.nextInt(4) == 0)) {
      thickness = pickText(combo.thickness());
    }
    boolean inWords = combo.process().equals("cut") && more.nextInt(100) < 15;
    if (inWords) {
      material = thickness.replace(" mm", more.nextBoolean() ? "mm" : " mm") + " " + material;
      thickness = null;
    }
    json.append(",\"material\":").append(text(material)).append(finish);
    if (thickness != null) {
      json.append(",\"thickness\":").append(text(thickness));
    }
    json.append(",\"process\":").append(text(combo.process()));
    if (now.became != null) {
      json.append(",\"resultColour\":").append(text(now.became));
    }
    if (now.lot != null) {
      random.nextInt(100);
    }
    String supplier = supplier(now.lot);
    if (now.namedLot != null) {
      json.append(",\"lot\":").append(text(now.namedLot));
    }
    if (now.supplier != null || now.lot == null && now.namedLot == null && supplier != null) {
      json.append(",\"supplier\":").append(text(now.supplier != null ? now.supplier : supplier));
    }
    maybe(json, "controllerVersion", now.controller, 100);
    return json;
  }

  /** Whose lot it is, where somebody says; a few name a supplier and no lot. */
  String supplier(String lot) {
    List<String> all = List.of("Tidewater Blanks", "Marl & Finch", "Osier Blanks");
    if (lot == null) {
      return more.nextInt(100) < 6 ? all.get(more.nextInt(all.size())) : null;
    }
    String known = all.stream().filter(one -> one.startsWith(lot.split(" ")[0])).findFirst().orElse(null);
    return more.nextInt(100) < 70 ? known : null;
  }

  String spell(String[] spellings) {
    return spellings[random.nextInt(100) < 55 ? 0 : random.nextInt(spellings.length)];
  }

  String judgement(String effect, Combo combo) {
    StringBuilder json = new StringBuilder(",\"effect\":").append(text(effect));
    if (effect.equals("right") && random.nextInt(100) < 70) {
      json.append(",\"quality\":").append(3 + random.nextInt(3));
    }
    if (!effect.equals("right") && random.nextInt(100) < 35) {
      String defect = effect.equals("too little") ? (line(combo.process()) ? "not cut through" : "faint mark") : pickText("charring", "halo", "banding");
      json.append(",\"defects\":[").append(text(defect)).append(']');
    }
    return json.toString();
  }

  void maybe(StringBuilder json, String name, String value, int percent) {
    if (value != null && random.nextInt(100) < percent) {
      json.append(",\"").append(name).append("\":").append(text(value));
    }
  }

  // ---- grids: rows of power, columns of speed on one blank

  void grids() {
    for (int i = 0; i < 24; i++) {
      Member member = members.get(random.nextInt(members.size()));
      List<Machine> own = machines.stream().filter(m -> m.owner().equals(member.handle()) && combos.stream().anyMatch(c -> c.source().equals(m.source()) && !line(c.process()))).toList();
      if (own.isEmpty() || member.reports() == 0) {
        continue;
      }
      Machine machine = own.get(random.nextInt(own.size()));
      List<Combo> fit = combos.stream().filter(c -> c.source().equals(machine.source()) && !line(c.process())).toList();
      grid(member, machine, weighted(fit), random.nextInt(DAYS), 3 + random.nextInt(2), 4 + random.nextInt(2));
    }
  }

  void grid(Member member, Machine machine, Combo combo, int day, int rows, int columns) {
    Circumstances now = circumstances(member, machine, combo);
    if (!combo.becomes().isEmpty()) {
      aim(now, combo, combo.becomes().size() / 2);
    }
    double spacing = machine.beamUm() < 60 ? 0.03 : 0.1;
    double middleShare = 0.5;
    double middleSpeed = Math.min(machine.maxSpeed() / 2, speedFor(machine, Math.exp(now.middle), spacing, 1, middleShare));
    LocalDateTime at = at(member, day, now);
    if (now.laterBatch != null) {
      name(now, combo, at.toLocalDate());
    }
    StringBuilder json = open(member, machine, combo, at, now).append(",\"trials\":[");
    List<Double> positions = new ArrayList<>();
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        double percent = Math.max(2, Math.min(100, Math.round(middleShare * 100 * Math.pow(1.3, r - (rows - 1) / 2.0))));
        Written v = speed(member.style(), middleSpeed * Math.pow(1.45, c - (columns - 1) / 2.0));
        Written h = spacing(member.style(), spacing);
        double lnDose = Math.log(machine.watts() * percent / 100 / (v.value * h.value));
        json.append(r + c == 0 ? "" : ",").append("{\"row\":").append(r).append(",\"column\":").append(c);
        json.append(",\"settings\":{\"power\":").append(text(tidy(percent) + " %")).append(",\"speed\":").append(text(v.text));
        json.append(",\"lineSpacing\":").append(text(h.text));
        if (!machine.regime().equals("cw")) {
          json.append(",\"repetitionRate\":\"40 kHz\"");
          json.append(machine.setsPulse() ? ",\"pulseDuration\":\"200 ns\"" : "");
        }
        json.append(now.air == null ? "" : ",\"airAssist\":" + now.air).append('}');
        String effect = effect(lnDose, now);
        json.append(",\"effect\":").append(text(effect)).append('}');
        positions.add(seen(2 * (lnDose - now.least) / (now.most - now.least) - 1, effect, now));
      }
    }
    madeGrids.add(new MadeGrid(lines.size(), combo, now, columns, positions, plan(json.toString(), rows, columns), at));
    lines.add(json.append("],\"notes\":\"Test grid: power down, speed across.\"}").toString());
  }

  /** The plan of a grid as its owner keeps it, read off the report of it. */
  static String plan(String json, int rows, int columns) {
    StringBuilder plan = new StringBuilder("{");
    for (String name : List.of("material", "coating", "colour", "resultColour", "process")) {
      String value = value(json, name);
      plan.append(value.isEmpty() ? "" : "\"" + name + "\":" + text(value) + ",");
    }
    String[] trials = json.substring(json.indexOf("\"trials\"")).split("\\{\"row\"");
    String fixed = trials[1].replaceFirst(".*(\"lineSpacing\".*?)}.*", "$1");
    plan.append("\"settings\":{").append(fixed).append("},\"axes\":{\"across\":{\"setting\":\"speed\",\"values\":[");
    for (int c = 0; c < columns; c++) {
      plan.append(c == 0 ? "" : ",").append(text(value(trials[1 + c], "speed")));
    }
    plan.append("]},\"down\":{\"setting\":\"power\",\"values\":[");
    for (int r = 0; r < rows; r++) {
      plan.append(r == 0 ? "" : ",").append(text(value(trials[1 + r * columns], "power")));
    }
    return plan.append("]}},\"blank\":{\"cell\":\"7 mm\",\"gap\":\"2 mm\",\"width\":\"90 mm\",\"height\":\"70 mm\"}}").toString();
  }

  // ---- colours on bare metal: each member tries to hit some of them

  void colours() {
    random = new Dice(SEED + 2);
    for (Combo combo : combos) {
      if (!combo.source().equals("fibre") || combo.becomes().size() < 3) {
        continue;
      }
      for (int colour = 0; colour < combo.becomes().size(); colour++) {
        for (Machine machine : machines) {
          Member member = members.stream().filter(m -> m.handle().equals(machine.owner())).findFirst().orElseThrow();
          if (machine.source().equals("fibre") && random.nextInt(100) < 88) {
            Circumstances now = circumstances(member, machine, combo);
            aim(now, combo, colour);
            report(member, machine, combo, DAYS - 120 + random.nextInt(120), now);
          }
        }
      }
    }
  }

  // ---- members who tried what somebody else had posted: the same work at much the same dose

  /** Some later report is said to repeat an earlier one; nothing else of it changes. */
  void repeats() {
    Random tries = new Random(SEED + 3);
    List<Made> repeated = new ArrayList<>();
    List<Made> repeating = new ArrayList<>();
    for (Made later : made) {
      List<Made> near = made.stream().filter(m -> !repeating.contains(m) && tried(m, later)).toList();
      if (near.isEmpty() || tries.nextInt(100) >= 17) {
        continue;
      }
      List<Made> known = near.stream().filter(repeated::contains).toList();
      List<Made> among = known.isEmpty() || tries.nextInt(100) < 20 ? near : known;
      Made original = among.get(tries.nextInt(among.size()));
      repeated.add(original);
      repeating.add(later);
      String id = value(lines.get(original.line()), "id");
      lines.set(later.line(), lines.get(later.line()).replaceFirst(",\"by\"", ",\"repeatOf\":" + text(id) + ",\"by\""));
    }
    System.out.println(repeating.size() + " of them repeat " + repeated.stream().distinct().count() + " others");
  }

  /** Reports are loaded in the order of their lines, so an original stands before its repeat. */
  static boolean tried(Made original, Made later) {
    return original.line() < later.line()
        && original.at().isBefore(later.at())
        && !original.by().equals(later.by())
        && original.combo() == later.combo()
        && original.work().equals(later.work())
        && Math.abs(original.lnDose() - later.lnDose()) < 0.25;
  }

  // ---- what members say of their results

  /** In the order of the calendar, so that nobody quotes what is still to come. */
  void remarks() {
    Map<Sentence, Integer> used = new HashMap<>();
    Set<String> said = new HashSet<>();
    for (Made one : made.stream().sorted(Comparator.comparing(Made::at)).toList()) {
      Random life = new Random(SEED * 37 + one.line());
      if (life.nextInt(100) >= 52) {
        continue;
      }
      Set<String> tags = tags(one);
      Sentence main = best(' ', tags, used, said, one.by(), life, "");
      if (main == null) {
        continue;
      }
      String remark = main.text();
      boolean german = main.tags().contains("@larchling");
      Sentence added = !german && life.nextInt(100) < 45 ? best('+', tags, used, said, one.by(), life, remark) : null;
      remark = fill(added == null ? remark : remark + " " + added.text(), one);
      lines.set(one.line(), insert(one.line(), "notes", text(inTheirWay(one.by(), remark, life))));
    }
  }

  String insert(int line, String name, String value) {
    String json = lines.get(line);
    return json.substring(0, json.length() - 1) + ",\"" + name + "\":" + value + "}";
  }

  Set<String> tags(Made one) {
    String json = lines.get(one.line());
    Set<String> tags = new HashSet<>(one.combo().tags());
    tags.add(one.combo().source());
    tags.add(one.now().machine.motion());
    tags.add(Map.of("surface engraving", "engrave", "deep engraving", "deep", "coating removal", "strip", "colour marking", "mark").getOrDefault(one.combo().process(), one.combo().process()));
    tags.add(Map.of("too little", "little", "too much", "much").getOrDefault(one.effect(), "right"));
    tags.add("@" + one.by());
    tags.add("q" + json.replaceFirst(".*\"quality\":(\\d).*|.*", "$1"));
    tags.add(one.now().air == null ? "" : one.now().air ? "air" : "noair");
    String passes = passes(json);
    tags.add(passes.isEmpty() || passes.equals("1") ? "" : "passes");
    String offset = value(json, "focusOffset");
    tags.add(offset.isEmpty() || offset.startsWith("0 ") ? "" : "offset");
    tags.add(one.now().namedLot == null || one.now().namedLot.startsWith("offcut") ? "" : "lot");
    tags.add(one.now().wants > 1.05 ? "thick" : one.now().wants < 0.97 ? "thin" : "");
    tags.add(json.contains("\"repeatOf\"") ? "repeat" : "");
    LocalDate day = one.at().toLocalDate();
    tags.add(within(day, "11-25", "12-23") ? "december" : within(day, "05-02", "06-14") ? "fair" : within(day, "07-10", "08-24") ? "summer" : "");
    tags.add(within(day, "12-16", "12-23") ? "advent" : "");
    return tags;
  }

  static String passes(String json) {
    return json.replaceFirst(".*\"passes\":(\\d+).*|.*", "$1");
  }

  /** What fits best, was used least and was not said by the same member; nothing that speaks of the same thing twice. */
  Sentence best(char kind, Set<String> tags, Map<Sentence, Integer> used, Set<String> said, String by, Random life, String after) {
    Sentence best = null;
    double least = Double.MAX_VALUE;
    for (Sentence one : sentences) {
      if (one.kind() != kind || !tags.containsAll(one.tags()) || sharesWord(one.text(), after)) {
        continue;
      }
      double score = used.getOrDefault(one, 0) * 1.5 - one.tags().size() + life.nextDouble() * 4 + (said.contains(by + one.text()) ? 5 : 0);
      if (score < least) {
        least = score;
        best = one;
      }
    }
    if (best != null) {
      used.merge(best, 1, Integer::sum);
      said.add(by + best.text());
    }
    return best;
  }

  static boolean sharesWord(String added, String main) {
    Set<String> stems = new HashSet<>();
    for (String word : main.toLowerCase(Locale.ROOT).split("[^a-zäöüß{}]+")) {
      if (word.length() > 2) {
        stems.add(word.substring(0, Math.min(4, word.length())));
      }
    }
    stems.removeAll(Set.of("the", "and", "was", "with", "that", "this", "not", "for", "befo", "afte", "more", "one", "all", "once", "only", "done", "last", "week"));
    return Arrays.stream(added.toLowerCase(Locale.ROOT).split("[^a-zäöüß{}]+")).anyMatch(word -> word.length() > 2 && stems.contains(word.substring(0, Math.min(4, word.length()))));
  }

  String fill(String remark, Made one) {
    String json = lines.get(one.line());
    String filled = remark.replace("{passes}", passes(json)).replace("{offset}", value(json, "focusOffset")).replace("{lot}", "" + one.now().namedLot);
    return filled.contains("{first}") ? filled.replace("{first}", authorOf(value(json, "repeatOf"))) : filled;
  }

  String authorOf(String id) {
    return lines.stream().filter(line -> line.startsWith("{\"id\":\"" + id)).map(line -> value(line, "by")).findFirst().orElseThrow();
  }

  /** Some never bother with capitals and full stops. */
  static String inTheirWay(String by, String remark, Random life) {
    if (!Set.of("moorcock", "rustbucket", "wickerwill", "brindle", "newcomer-lin", "kerfuffle").contains(by) || life.nextInt(3) == 0) {
      return remark;
    }
    String own = remark.replaceFirst("\\.$", "");
    boolean name = own.startsWith("I ") || own.matches("(Tidewater|Marl|Osier|Von|Klasse).*");
    return name ? own : own.substring(0, 1).toLowerCase(Locale.ROOT) + own.substring(1);
  }

  // ---- what is drawn of them when the club is loaded

  /** A judgement has noise that a picture must not contradict. */
  static double seen(double position, String effect, Circumstances now) {
    boolean whole = now.low == now.least && now.high == now.most;
    double clear = !whole ? position : effect.equals("right") ? Math.max(-1, Math.min(1, position))
        : effect.equals("too little") ? Math.min(-1.15, position) : Math.max(1.15, position);
    return Math.round(Math.max(-3, Math.min(3, clear)) * 100) / 100.0;
  }

  /** Of every combination the first of each outcome, and of the rest one in nine. */
  void pictures() {
    Set<String> shown = new HashSet<>();
    Map<Sentence, Integer> used = new HashMap<>();
    int drawn = madeGrids.size();
    for (Made one : made) {
      Random life = new Random(SEED * 41 + one.line());
      boolean first = shown.add(combos.indexOf(one.combo()) + one.effect());
      if (life.nextInt(9) != 0 && !(first && life.nextInt(3) == 0)) {
        continue;
      }
      Sentence caption = best('=', tags(one), used, new HashSet<>(), one.by(), life, "");
      StringBuilder picture = picture(one.combo(), one.now()).append(",\"at\":[").append(seen(one.position(), one.effect(), one.now())).append(']');
      if (caption != null) {
        picture.append(",\"caption\":").append(text(caption.text()));
      }
      lines.set(one.line(), insert(one.line(), "picture", picture.append('}').toString()));
      drawn++;
    }
    for (MadeGrid grid : madeGrids) {
      StringBuilder picture = picture(grid.combo(), grid.now()).append(",\"columns\":").append(grid.columns()).append(",\"at\":").append(grid.positions().toString().replace(" ", ""));
      picture.append(",\"caption\":").append(text(grid.line() % 2 == 0 ? "The whole grid, rows of power, columns of speed" : "The grid after wiping"));
      lines.set(grid.line(), insert(grid.line(), "picture", picture.append('}').toString()));
    }
    System.out.println(drawn + " of them have a picture");
  }

  static StringBuilder picture(Combo combo, Circumstances now) {
    List<String> tags = combo.tags();
    String of = tags.get(0).equals("wood") || tags.get(0).equals("metal") || tags.get(0).equals("stone") || tags.get(0).equals("mdf") ? tags.get(tags.size() - 1) : tags.get(0);
    of = tags.contains("oxide") ? tags.get(2) + " oxide" : of;
    StringBuilder json = new StringBuilder("{\"of\":").append(text(of)).append(combo.process().equals("cut") ? ",\"cut\":true" : "");
    return now.base == null ? json : json.append(",\"base\":").append(text(now.base));
  }

  // ---- what others say under them

  void comments() {
    Map<Sentence, Integer> used = new HashMap<>();
    Map<LocalDateTime, String> sorted = new TreeMap<>();
    Random talk = new Random(SEED + 6);
    LocalDateTime end = FIRST_DAY.plusDays(DAYS + 1).atTime(20, 0);
    for (Made one : made) {
      if (talk.nextInt(100) >= (lines.get(one.line()).contains("\"picture\"") ? 22 : 9) || one.by().equals("kerfuffle") && talk.nextInt(3) > 0) {
        continue;
      }
      Member other = members.get(talk.nextInt(members.size() - 2)); // not the two who came last
      Sentence said = best('>', tags(one), used, new HashSet<>(), other.handle(), talk, "");
      LocalDateTime at = one.at().plusMinutes(20 + (long) Math.pow(talk.nextDouble() * 70, 2)).withSecond(talk.nextInt(60));
      at = at.getHour() < 7 ? at.plusHours(9) : at;
      if (other.handle().equals(one.by()) || said == null || at.isAfter(end)) {
        continue;
      }
      String[] parts = said.text().split(" => ");
      String report = value(lines.get(one.line()), "id");
      sorted.put(at, comment(other.handle(), at, report, inTheirWay(other.handle(), parts[0], talk)));
      LocalDateTime back = at.plusMinutes(15 + (long) Math.pow(talk.nextDouble() * 36, 2));
      back = back.getHour() < 7 ? back.plusHours(9) : back;
      if (parts.length > 1 && talk.nextInt(10) < 8 && back.isBefore(end)) {
        sorted.put(back, comment(one.by(), back, report, inTheirWay(one.by(), parts[1], talk)));
      }
    }
    sorted.values().forEach(line -> comments.add("{\"id\":" + text(new UUID(0x0193_0000_c000_7000L + ((long) (comments.size() + 1) << 16), 0x8000_7a1c_0000_0000L | comments.size() + 1).toString()) + line));
  }

  // ---- what members keep: the grids they burned, pieces of them, deliveries

  static final List<String> PLACES = List.of("shelf by the window", "drawer two", "box under the bench", "tin on the rack", "board behind the door", "shoe box", "wall, upper row", "folder with pockets");

  void stock() {
    Random keeps = new Random(SEED + 7);
    Set<String> byHand = Set.of("fernhollow", "emberfox", "hearthside");
    for (MadeGrid grid : madeGrids) {
      String json = lines.get(grid.line());
      String by = value(json, "by");
      if (byHand.contains(by) || keeps.nextInt(10) < 2) {
        continue;
      }
      String id = keptId();
      stock.add(kept(id, by, grid.at().minusHours(1), "\"machine\":" + text(value(json, "machine")) + ",\"report\":" + text(value(json, "id")) + ",\"grid\":" + grid.plan()));
      String place = PLACES.get(Math.floorMod(by.hashCode(), PLACES.size()));
      stock.add(kept(keptId(), by, grid.at().plusHours(3), "\"sample\":{\"grid\":" + text(id) + ",\"place\":" + text(place) + ",\"notes\":\"The grid itself, date on the back.\"}"));
    }
    Map<String, Integer> samples = new HashMap<>();
    for (Made one : made) {
      boolean keeper = one.effect().equals("right") && keeps.nextInt(14) == 0 && !byHand.contains(one.by());
      if (keeper && samples.merge(one.by(), 1, Integer::sum) <= 4) {
        String place = PLACES.get(Math.floorMod(one.by().hashCode(), PLACES.size()));
        String box = keeps.nextBoolean() ? ",\"box\":" + text("Box " + (1 + keeps.nextInt(3))) : "";
        stock.add(kept(keptId(), one.by(), one.at().plusHours(2), "\"sample\":{\"report\":" + text(value(lines.get(one.line()), "id")) + box + ",\"place\":" + text(place) + "}"));
      }
    }
    Set<String> delivered = new HashSet<>();
    for (Made one : made.stream().sorted(Comparator.comparing(Made::at)).toList()) {
      Lot lot = lots.stream().filter(l -> l.name().equals(one.now().namedLot)).findFirst().orElse(null);
      if (lot == null || byHand.contains(one.by()) || !delivered.add(one.by() + lot.name()) || keeps.nextInt(3) > 0) {
        continue;
      }
      int received = 10 * (1 + keeps.nextInt(6));
      int usable = received - keeps.nextInt(1 + received / 8);
      int burned = one.at().getYear() == 2025 ? usable : keeps.nextInt(usable);
      String json = lines.get(one.line());
      LocalDate day = one.at().toLocalDate().minusDays(keeps.nextInt(9));
      String coating = value(json, "coating");
      StringBuilder said = new StringBuilder("\"lot\":{\"supplier\":").append(text(lot.supplier())).append(",\"batch\":").append(text(lot.name())).append(",\"material\":").append(text(one.combo().material()[0]));
      said.append(coating.isEmpty() ? "" : ",\"coating\":" + text(one.combo().coating()[0])).append(one.now().base == null || coating.isEmpty() ? "" : ",\"colour\":" + text(one.now().base));
      said.append(",\"received\":").append(received).append(",\"usable\":").append(usable).append(",\"burned\":").append(burned).append(",\"date\":").append(text(day.toString()));
      said.append(",\"notes\":").append(text(lot.name() + (lot.factor() > 1.05 ? ", wants more than the one before." : lot.factor() < 0.97 ? ", wants a little less." : ".")));
      // two members of three share what they count
      said.append(Math.floorMod(one.by().hashCode(), 3) > 0 ? ",\"shared\":true" : "");
      stock.add(kept(keptId(), one.by(), day.atTime(10, 0), said.append('}').toString()));
    }
  }

  String keptId() {
    kept++;
    return new UUID(0x0193_0000_d000_7000L + ((long) kept << 16), 0x8000_7a1d_0000_0000L | kept).toString();
  }

  static String kept(String id, String by, LocalDateTime at, String what) {
    return "{\"id\":" + text(id) + ",\"by\":" + text(by) + ",\"at\":" + text(stamp(at)) + "," + what + "}";
  }

  static String stamp(LocalDateTime at) {
    return at.withNano(0) + (at.getSecond() == 0 ? ":00Z" : "Z");
  }

  static String comment(String by, LocalDateTime at, String report, String said) {
    return ",\"by\":" + text(by) + ",\"at\":" + text(stamp(at)) + ",\"report\":" + text(report) + ",\"text\":" + text(said) + "}";
  }

  // ---- what goes wrong in real life, each once or a few times

  void oddities() throws IOException {
    for (String line : Files.readAllLines(folder.resolve("generator/by-hand.jsonl"), StandardCharsets.UTF_8)) {
      if (!line.isBlank()) {
        lines.add(line.replaceFirst("\\{", "{\"id\":" + text(id()) + ","));
      }
    }
  }

  void save() throws IOException {
    save("reports.jsonl", lines);
    comments.add(0, "# What members say under the reports of others, and what these reply; made by the generator");
    save("comments.jsonl", comments);
    stock.add(0, "# What more members keep for themselves: grids, the pieces of them, and deliveries; made by the generator");
    save("stock-made.jsonl", stock);
  }

  void save(String file, List<String> all) throws IOException {
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(folder.resolve(file), StandardCharsets.UTF_8))) {
      all.forEach(line -> out.print(line + "\n"));
    }
    System.out.println(all.size() + " lines of " + file);
  }

  // ---- small change

  String id() {
    written++;
    return new UUID(0x0193_0000_0000_7000L | (long) written << 16 | (random.nextInt(0x1000)), 0x8000_0000_0000_0000L | random.nextLong() >>> 2).toString();
  }

  double pick(double[] values) {
    return values[random.nextInt(values.length)];
  }

  String pickText(String... values) {
    return values[random.nextInt(values.length)];
  }

  static double round(double value, double step) {
    return Math.round(value / step) * step;
  }

  /** At most four significant digits, no trailing zeros, never exactly three decimals behind a whole part. */
  static String tidy(double value) {
    String text = String.format(Locale.ROOT, value >= 100 ? "%.0f" : value >= 1 ? "%.2f" : "%.4f", value);
    if (text.contains(".")) {
      text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
    return text;
  }

  static String text(String value) {
    return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
