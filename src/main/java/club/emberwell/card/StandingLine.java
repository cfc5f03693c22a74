package club.emberwell.card;

import club.emberwell.bench.Housing;
import club.emberwell.laser.safety.EyeBeam;
import club.emberwell.remark.Coded;

/** What everybody goes through before every job. Nobody can take one of them off a card. */
public enum StandingLine implements Coded {
  EXTRACTION("extraction", "The extraction is on and blows outside."),
  EXTINGUISHER("extinguisher", "A fire extinguisher is within reach."),
  GLASSES("glasses", "Everybody in the room wears glasses made for this laser."),
  HOUSING("housing", "The housing is closed, and no interlock is bridged.") {
    @Override
    String at(Housing housing, double watts) {
      boolean classFour = watts > EyeBeam.CLASS_3B_W;
      if (housing == Housing.OPEN) {
        return classFour
            ? "Open class 4 beam (over 0.5 W): nobody without glasses is in the room, nobody can"
                + " come in, nothing that reflects lies about."
            : "Open beam: nobody without glasses is in the room, and nobody can come in.";
      }
      return housing == null
          ? "The housing is closed. Nobody wrote down whether this machine has one: where it has"
              + " none, count the beam as open class 4; nobody without glasses is in the room."
          : sentence();
    }
  },
  WATCH("watch", "Somebody stays until it is done and has cooled."),
  MATERIAL("material", "It is known what the material is; nothing unknown goes in.");

  private final String code;
  private final String sentence;

  StandingLine(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  String sentence() {
    return sentence;
  }

  /**
   * The line as it reads at a machine.
   *
   * @param housing null = its owner did not say
   * @param watts rated power
   */
  String at(Housing housing, double watts) {
    return sentence;
  }

  /** The line as it reads where no machine is known. */
  public String anywhere() {
    return this == HOUSING
        ? "The housing is closed; where there is none, nobody without glasses is in the room."
        : sentence;
  }
}
