package club.emberwell.consensus.answer;

import club.emberwell.laser.Settings;
import club.emberwell.remark.Coded;
import java.util.List;

/**
 * The whole settings to try first on one machine. Where to begin, never a recommendation.
 *
 * @param dose what the settings give, canonical unit
 * @param basis where the dose comes from
 * @param from the trial whose other settings are kept
 * @param why what makes it only a rough start; empty where nothing does
 * @param lowered whether the power is lower than the trial's since the machine runs no faster
 */
public record Start(
    Settings settings, double dose, Basis basis, Whole from, List<Why> why, boolean lowered) {

  /** Where the dose comes from. */
  public enum Basis implements Coded {
    MIDDLE("middle", "the middle of members' right results"),
    FACTOR("machine-factor", "the middle of members' right results, moved to your machine"),
    ONE_TRIAL("one-trial", "the trial these settings come from"),
    BORROWED("borrowed", "right results of work like it");

    private final String code;
    private final String words;

    Basis(String code, String words) {
      this.code = code;
      this.words = words;
    }

    @Override
    public String code() {
      return code;
    }

    public String words() {
      return words;
    }
  }

  /** Whether a wide test is needed round it. */
  public boolean rough() {
    return !why.isEmpty();
  }
}
