/** Lists by page: {@link club.emberwell.listing.Slice}. */
package club.emberwell.listing;
