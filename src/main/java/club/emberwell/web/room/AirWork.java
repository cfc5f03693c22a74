package club.emberwell.web.room;

import club.emberwell.laser.safety.Ventilation;
import club.emberwell.laser.safety.Ventilation.Carried;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.room.RoomAir;
import club.emberwell.room.RoomValues;
import club.emberwell.web.dose.Worked;
import java.util.ArrayList;
import java.util.List;

/** What follows for the air of a room, each number with its formula and source. */
final class AirWork {
  private static final String VELOCITIES =
      "ACGIH Industrial Ventilation, 2009 table as quoted on a public page";
  private static final String MIXED = "Dilution of well-mixed air";
  private static final String NO_SOURCE = "Common practice, no source";

  private final RoomValues room;
  private final RoomAir air;
  private final UnitPreferences reader;
  private final List<Worked> worked = new ArrayList<>();

  private AirWork(RoomValues room, UnitPreferences reader) {
    this.room = room;
    this.air = RoomAir.of(room);
    this.reader = reader;
  }

  static List<Worked> of(RoomValues room, UnitPreferences reader) {
    AirWork work = new AirWork(room, reader);
    work.duct();
    work.changes();
    work.makeUp();
    work.lid();
    return List.copyOf(work.worked);
  }

  /** What would be needed for the rest, each a sentence. */
  static List<String> missing(RoomValues room) {
    List<String> lines = new ArrayList<>();
    if (room.air().flowM3h() == null) {
      lines.add("Enter the air flow to get air speeds, air changes and clearing times.");
      return lines;
    }
    if (room.air().ductMm() == null) {
      lines.add("Enter the duct's diameter to get the air speed in it.");
    }
    if (room.size().volumeM3() == null) {
      lines.add("Enter the room's size to get air changes and clearing times.");
    }
    return lines;
  }

  private void duct() {
    Double speed = air.ductMs();
    if (speed == null) {
      return;
    }
    worked.add(
        new Worked(
            "Air speed in the duct",
            speed(speed),
            "v = Q / (π d² / 4)",
            "Continuity",
            List.of("Mean over the duct; bends, filters and a bad fit change the flow.")));
    Carried carried = room.air().carried();
    if (carried != null) {
      worked.add(
          new Worked(
              "Usual for " + carried.label(),
              speed(carried.fromMs()) + " to " + speed(carried.toMs()),
              place(carried, speed),
              VELOCITIES,
              List.of("At these speeds nothing settles in the duct. They say nothing of fumes.")));
    }
  }

  private static String place(Carried carried, double speed) {
    if (speed < carried.fromMs()) {
      return "Slower than usual: some of it can settle in the duct, where it can burn.";
    }
    return speed > carried.toMs()
        ? "Faster than usual: it costs noise and pressure."
        : "Within the usual speeds.";
  }

  private void changes() {
    if (air.changesPerHour() == null) {
      return;
    }
    worked.add(
        new Worked(
            "Air changes",
            number(air.changesPerHour()) + " per hour",
            "ACH = Q / V, V = "
                + QuantityPrinter.print(room.size().volumeM3(), QuantityKind.VOLUME, reader),
            "Definition",
            List.of("Assumes that all of this air leaves the building and fresh air comes in.")));
    purge("90 %", air.purge90Minutes());
    purge("99 %", air.purge99Minutes());
  }

  private void purge(String share, double minutes) {
    worked.add(
        new Worked(
            share + " of it is gone after",
            minutes(minutes),
            "t = ln(C0 / C) / ACH",
            MIXED,
            List.of(
                "Assumes well-mixed air and no new fumes. Corners take longer.",
                "Counted from the moment the fumes stop.")));
  }

  private void makeUp() {
    Double flow = room.air().flowM3h();
    if (flow == null) {
      return;
    }
    worked.add(
        new Worked(
            "Make-up air",
            QuantityPrinter.print(flow, QuantityKind.AIR_FLOW, reader),
            "What leaves must come in",
            NO_SOURCE,
            List.of(
                "Where no opening lets it in, the fan moves less, and air comes down chimneys and"
                    + " flues of heaters.")));
    if (air.openingMs() != null) {
      worked.add(
          new Worked(
              "Speed through the opening",
              speed(air.openingMs()),
              "v = Q / (width × height)",
              "Continuity",
              List.of("If all of it comes in there.")));
    }
  }

  private void lid() {
    worked.add(
        new Worked(
            "Lid shut after acrylic, at least",
            Ventilation.ACRYLIC_MINUTES + " min",
            "Particles are given off for at least so long",
            "Munoz et al., J. Chem. Health Saf. 2023, doi 10.1021/acs.chas.3c00013",
            List.of("With the extraction running. Other materials were not measured there.")));
  }

  private String minutes(double minutes) {
    return number(Math.ceil(minutes * 10 - 1e-9) / 10) + " min";
  }

  private String speed(double ms) {
    return isFeet() ? number(ms / Ventilation.MS_PER_FPM) + " ft/min" : number(ms) + " m/s";
  }

  /** Whoever counts air in cubic feet counts its speed in feet. */
  private boolean isFeet() {
    return reader.unit(QuantityKind.AIR_FLOW).code().startsWith("[cft_i]");
  }

  private String number(double value) {
    return QuantityPrinter.number(value, reader.style());
  }
}
