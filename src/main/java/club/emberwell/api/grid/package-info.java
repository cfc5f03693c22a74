/** Test grids for programs: plans, their results and photos. */
package club.emberwell.api.grid;
