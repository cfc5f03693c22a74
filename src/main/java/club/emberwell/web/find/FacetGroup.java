package club.emberwell.web.find;

import club.emberwell.search.query.Facet;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Facets that ask about the same thing. Folded they are one stop on the way to the results.
 *
 * @param open whether it stands open: something in it is chosen
 */
record FacetGroup(String code, String label, boolean open, List<FacetView> facets) {
  /** What facets ask about, in the order of the page. */
  private enum Topic {
    WORK("Material and process"),
    LASER("Laser"),
    RESULT("Result"),
    ORIGIN("Member, supplier, lot");

    private final String label;

    Topic(String label) {
      this.label = label;
    }

    private static Topic of(Facet facet) {
      return switch (facet) {
        case MATERIAL, COATING, COLOUR, THICKNESS, PROCESS -> WORK;
        case SOURCE,
            POWER_CLASS,
            BAND,
            REGIME,
            MOTION,
            MACHINE_MODEL,
            MACHINE_NAME,
            CONTROLLER_VERSION ->
            LASER;
        case EFFECT, RESULT_COLOUR, PHOTO -> RESULT;
        case MEMBER, SUPPLIER, LOT -> ORIGIN;
      };
    }
  }

  /**
   * @param facets those with values
   */
  static List<FacetGroup> of(List<FacetView> facets) {
    return Stream.of(Topic.values())
        .map(topic -> of(topic, facets.stream().filter(f -> Topic.of(f.facet()) == topic).toList()))
        .filter(group -> !group.facets.isEmpty())
        .toList();
  }

  private static FacetGroup of(Topic topic, List<FacetView> facets) {
    return new FacetGroup(
        topic.name().toLowerCase(Locale.ROOT),
        topic.label,
        facets.stream().anyMatch(FacetView::chosen),
        facets);
  }
}
