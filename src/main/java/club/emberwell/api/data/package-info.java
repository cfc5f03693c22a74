/** Data to take along, described for programs. */
package club.emberwell.api.data;
