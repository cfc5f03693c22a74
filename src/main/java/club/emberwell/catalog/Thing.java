package club.emberwell.catalog;

import java.util.List;

/**
 * What a word for a thing may be made of: a mug of porcelain or steel. Alone it means none of them.
 *
 * @param of slugs of materials
 * @param coated slug of the one that is meant where a coating is named beside the thing
 */
public record Thing(List<String> of, String coated) {
  public Thing {
    of = List.copyOf(of);
  }
}
