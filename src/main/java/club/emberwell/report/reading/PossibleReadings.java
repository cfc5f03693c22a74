package club.emberwell.report.reading;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Setting;
import club.emberwell.laser.dose.Possible;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.remark.Remark;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Of the readings of an ambiguous setting those that the laser can be told. */
public final class PossibleReadings {
  private static final Pattern AT_SETTING = Pattern.compile("(?:/trials/\\d+)?/settings/(\\w+)");

  private PossibleReadings() {}

  /**
   * The same remark without the readings that cannot be meant.
   *
   * @param laser null = not known: then what no laser can be told
   */
  static Remark on(Laser laser, Remark remark) {
    Matcher at = AT_SETTING.matcher(remark.field());
    if (!remark.isError() || remark.readings().isEmpty() || !at.matches()) {
      return remark;
    }
    return Setting.of(at.group(1))
        .map(setting -> remark.with(remark.detail(), of(laser, setting, remark.readings())))
        .orElse(remark);
  }

  /** Those of the texts that the laser can be told. */
  public static List<String> of(Laser laser, Setting setting, List<String> texts) {
    return texts.stream().filter(text -> isPossible(laser, setting, text)).toList();
  }

  private static boolean isPossible(Laser laser, Setting setting, String text) {
    return setting.value().bases().stream()
        .flatMap(
            basis ->
                QuantityReader.read(basis.kind(), text, NumberStyle.ANY).value().stream()
                    .filter(read -> basis.bounds().hold(read.doubleValue())))
        .map(PossibleReadings::amount)
        .anyMatch(amount -> Possible.on(laser, setting, amount));
  }

  private static Amount amount(Quantity read) {
    return new Amount(read.kind(), read.doubleValue());
  }
}
