package club.emberwell.api.view;

import club.emberwell.remark.Remark;
import java.util.List;

/**
 * What was noticed while reading an entry.
 *
 * @param warnings implausible values, by field
 * @param remarks what else is worth knowing
 */
public record Noticed(List<RemarkJson> warnings, List<RemarkJson> remarks) {
  public static Noticed of(List<Remark> remarks) {
    return new Noticed(RemarkJson.warnings(remarks), RemarkJson.notes(remarks));
  }
}
