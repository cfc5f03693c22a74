package club.emberwell.recipe;

import club.emberwell.listing.ListOrder;
import club.emberwell.remark.Coded;

/** In which order a member's recipes are listed. */
public enum RecipeSort implements Coded {
  /** The last used first; one that was never used counts from when it was made. */
  USED("used", "Last used", ListOrder.newestFirst("recipes-used", RecipeLimits.PAGE)),
  NEWEST("newest", "Newest", ListOrder.newestFirst("recipes", RecipeLimits.PAGE)),
  NAME("name", "Name", ListOrder.oldestFirst("recipes-name", RecipeLimits.PAGE));

  private final String code;
  private final String label;
  private final ListOrder order;

  RecipeSort(String code, String label, ListOrder order) {
    this.code = code;
    this.label = label;
    this.order = order;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  ListOrder order() {
    return order;
  }
}
