package club.emberwell.card;

/** A link that opened a card once and does not any more. */
public class LinkEnded extends RuntimeException {
  public LinkEnded() {
    super(
        "This link was ended, or its recipe was removed. Ask whoever gave it to you for another.");
  }
}
