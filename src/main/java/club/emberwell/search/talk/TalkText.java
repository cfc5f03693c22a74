package club.emberwell.search.talk;

import java.util.UUID;

/**
 * A question with its answers, or a notice, as far as it is searched.
 *
 * @param number rises with every entry; the order of a rebuild
 * @param kind {@code question} or {@code notice}
 * @param body everything said below the title
 * @param answered whether a live answer is among it
 * @param material slug or null, the same for coating
 * @param source code of the laser source or null, the same for the process
 */
public record TalkText(
    UUID id,
    long number,
    String kind,
    String title,
    String body,
    boolean answered,
    String material,
    String coating,
    String source,
    String process,
    String machineModel,
    String controllerVersion) {}
