package club.emberwell.search.talk;

import club.emberwell.entry.EntryKind;
import java.util.UUID;

/**
 * A question with its answers, or a notice, as far as it is searched.
 *
 * @param number rises with every entry; the order of a rebuild
 * @param kind question or notice
 * @param body everything said below the title
 * @param answered whether a live answer is among it
 */
public record TalkText(
    UUID id,
    long number,
    EntryKind kind,
    String title,
    String body,
    boolean answered,
    About about) {

  /**
   * What it is tied to, each null where it is not.
   *
   * @param material slug, the same for coating
   * @param source code of the laser source, the same for the process
   */
  public record About(
      String material,
      String coating,
      String source,
      String process,
      String machineModel,
      String controllerVersion) {}
}
