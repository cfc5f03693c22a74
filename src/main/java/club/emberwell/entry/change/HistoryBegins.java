package club.emberwell.entry.change;

/**
 * A new history begins, in the transaction that is open: whoever stored numbers of transactions
 * takes them out of comparison, for they are those of another server.
 */
public record HistoryBegins() {}
