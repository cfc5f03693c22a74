package club.emberwell.api.room;

/**
 * Something was checked.
 *
 * @param check its code
 * @param on the day, ISO 8601; left out for today
 */
record CheckRequest(String check, String on) {}
