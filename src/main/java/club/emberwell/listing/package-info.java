/**
 * Lists by page: {@link club.emberwell.listing.Slice}, of the {@link club.emberwell.listing.Part}
 * that is asked for; and tables to take along: {@link club.emberwell.listing.Csv}.
 */
package club.emberwell.listing;
