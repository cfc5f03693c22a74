package club.emberwell.report.reading;

/** What an author says beside the work and its settings; null = nothing. */
public record Particulars(String notes, String lot, String controllerVersion) {}
