/**
 * What a test grid says: as written, and as read from that. Pure: no database.
 *
 * <p>Entry points: {@link club.emberwell.grid.reading.WrittenGrid} is what comes in and is kept,
 * {@link club.emberwell.grid.reading.GridReader} is the function from it to a {@link
 * club.emberwell.grid.reading.GridReading}.
 */
package club.emberwell.grid.reading;
