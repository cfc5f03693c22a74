package club.emberwell.room;

import club.emberwell.laser.safety.Ventilation;

/**
 * What follows from a room's size and the flow through its duct; null where something is not said.
 *
 * @param ductMs air speed in the duct, m/s
 * @param changesPerHour air changes
 * @param purge90Minutes until 90 % of what was in the air is gone, min
 * @param purge99Minutes until 99 % is
 * @param openingMs air speed where the same flow comes in again, m/s
 */
public record RoomAir(
    Double ductMs,
    Double changesPerHour,
    Double purge90Minutes,
    Double purge99Minutes,
    Double openingMs) {
  private static final double MOST = 0.9;
  private static final double NEARLY_ALL = 0.99;

  public static RoomAir of(RoomValues room) {
    Double flow = room.air().flowM3h();
    Double volume = room.size().volumeM3();
    Double duct = room.air().ductMm();
    Double opening = room.air().openingM2();
    if (flow == null) {
      return new RoomAir(null, null, null, null, null);
    }
    Double changes = volume == null ? null : Ventilation.airChangesPerHour(flow, volume);
    return new RoomAir(
        duct == null ? null : Ventilation.velocityMs(flow, duct),
        changes,
        changes == null ? null : Ventilation.purgeMinutes(changes, MOST),
        changes == null ? null : Ventilation.purgeMinutes(changes, NEARLY_ALL),
        opening == null ? null : Ventilation.openingMs(flow, opening));
  }
}
