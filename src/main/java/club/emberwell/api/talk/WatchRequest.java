package club.emberwell.api.talk;

/**
 * A search to keep, as sent.
 *
 * @param query what stands behind the question mark of a search's address
 * @param label what to call it, or left out
 * @param mail whether its finds come by mail; left out = no
 */
record WatchRequest(String query, String label, Boolean mail) {
  boolean wantsMail() {
    return mail != null && mail;
  }
}
