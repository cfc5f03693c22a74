package club.emberwell.remark;

/** The password, or whatever else should prove who somebody is, does not fit. */
public final class Unproven extends TurnedDown {
  public Unproven(String why) {
    super(why);
  }
}
