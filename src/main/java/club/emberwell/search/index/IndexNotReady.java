package club.emberwell.search.index;

/** The index is being opened or built and nothing can be found yet; ask again in a moment. */
public class IndexNotReady extends RuntimeException {
  public IndexNotReady() {
    super("The search index is being built. Please try again in a moment.");
  }
}
