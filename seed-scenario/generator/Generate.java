import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
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
      String[] thickness, double airFactor, double batchFactor, int weight, List<Becomes> becomes) {}

  /** A colour that a mark takes up to this share of the window, and how people spell it. */
  record Becomes(double upTo, String... spellings) {}

  /**
   * A plain report as it was drawn.
   *
   * @param line its place in the file
   * @param work what must be the same in a repeat of it
   */
  record Made(int line, String by, int day, Combo combo, String work, double lnDose) {}

  Random random = new Random(SEED);

  /** Draws what was added later, so that the earlier reports stay as they were. */
  final Random more = new Random(SEED + 1);

  final Path folder;
  final List<Member> members = new ArrayList<>();
  final List<Machine> machines = new ArrayList<>();
  final List<Combo> combos = new ArrayList<>();
  final List<String> lines = new ArrayList<>();
  final List<Made> made = new ArrayList<>();
  int written;

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
          Integer.parseInt(cell[10]), becomes(cell[11])));
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
    Typed typed = settings(member, machine, combo, lnDose, now);
    String effect = effect(typed.lnDose(), now);
    if (now.became == null) {
      now.became = became(combo, (typed.lnDose() - now.low) / (now.high - now.low));
    }
    StringBuilder json = open(member, machine, combo, day, now);
    json.append(",\"settings\":").append(typed.json());
    json.append(judgement(effect, combo));
    maybe(json, "notes", note(effect, combo, now), 35);
    String work = now.colour + "/" + now.became + "/" + value(json, "thickness");
    made.add(new Made(lines.size(), member.handle(), day, combo, work, typed.lnDose()));
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
      now.lot = later ? "Tidewater 26-07" : "Tidewater 25-11";
      shift += later ? Math.log(combo.batchFactor()) : 0;
    } else if (random.nextInt(100) < 12) {
      now.lot = List.of("Marl & Finch 0312", "Osier Blanks A7", "Tidewater 25-11", "offcut bin").get(random.nextInt(4));
    }
    if (combo.colours().length > 0) {
      String[] cell = combo.colours()[random.nextInt(combo.colours().length)].split("=");
      shift += Math.log(Double.parseDouble(cell[1]));
      String[] spellings = cell[0].split("/");
      now.colour = spellings[random.nextInt(100) < 60 ? 0 : random.nextInt(spellings.length)];
    }
    now.controller = random.nextInt(100) < 30 ? List.of("3.9", "4.1", "4.2", "4.2.1").get(random.nextInt(4)) : null;
    now.low = Math.log(combo.low()) + shift;
    now.high = Math.log(combo.high()) + shift;
    now.middle = (now.low + now.high) / 2;
    return now;
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

  StringBuilder open(Member member, Machine machine, Combo combo, int day, Circumstances now) {
    StringBuilder json = new StringBuilder("{\"id\":").append(text(id()));
    json.append(",\"by\":").append(text(member.handle()));
    json.append(",\"at\":").append(text(FIRST_DAY.plusDays(day).toString()));
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
    maybe(json, "lot", now.lot, 100);
    String supplier = supplier(now.lot);
    if (supplier != null) {
      json.append(",\"supplier\":").append(text(supplier));
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

  String note(String effect, Combo combo, Circumstances now) {
    if (effect.equals("right")) {
      return pickText("Clean edges, wiped with a damp cloth.", "Second blank came out the same.", "Masked first; peeled easily.",
          "Crisp enough for 2 mm letters.", "Lens wiped before the run.", "Held flat with pins.", "Good contrast after rubbing.");
    }
    if (effect.equals("too little")) {
      return pickText("Patchy in the corners.", "Could still see the coat in the fill.", "Needs another go.", "Left tabs at the start of the line.");
    }
    return pickText("Browned round the letters.", "Base metal looks heat tinted.", "Smelled of burnt resin, stopped early.", "Soft edges, went too far.");
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
    StringBuilder json = open(member, machine, combo, day, now).append(",\"trials\":[");
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
        json.append(",\"effect\":").append(text(effect(lnDose, now))).append('}');
      }
    }
    lines.add(json.append("],\"notes\":\"Test grid: power down, speed across.\"}").toString());
  }

  // ---- colours on bare metal: each member tries to hit some of them

  void colours() {
    random = new Random(SEED + 2);
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
      if (near.isEmpty() || tries.nextInt(100) >= 13) {
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
        && original.day() <= later.day()
        && !original.by().equals(later.by())
        && original.combo() == later.combo()
        && original.work().equals(later.work())
        && Math.abs(original.lnDose() - later.lnDose()) < 0.25;
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
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(folder.resolve("reports.jsonl"), StandardCharsets.UTF_8))) {
      lines.forEach(line -> out.print(line + "\n"));
    }
    System.out.println(lines.size() + " reports written");
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
