/**
 * Lists by page: {@link club.emberwell.listing.Slice}, of the {@link club.emberwell.listing.Part}
 * that is asked for.
 */
package club.emberwell.listing;
