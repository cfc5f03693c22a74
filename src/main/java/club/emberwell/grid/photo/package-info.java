/**
 * The photo of a burned grid: perspective undone, cut into cells, the colour of each.
 *
 * <p>Entry points: {@link club.emberwell.grid.photo.GridColours} reads a picture; {@link
 * club.emberwell.grid.photo.Corners} says where the grid lies in it and what is wrong with that.
 */
package club.emberwell.grid.photo;
