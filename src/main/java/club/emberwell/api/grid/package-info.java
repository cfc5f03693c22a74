/**
 * Test grids for programs.
 *
 * <p>Entry points: {@link club.emberwell.api.grid.GridResource} plans and keeps them, {@link
 * club.emberwell.api.grid.GridResultResource} takes how they came out, {@link
 * club.emberwell.api.grid.GridPhotoResource} their photos.
 */
package club.emberwell.api.grid;
