/** Data to take along, described for programs by {@link club.emberwell.api.data.DataResource}. */
package club.emberwell.api.data;
