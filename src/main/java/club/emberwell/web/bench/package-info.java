/** Pages of the bench: a member's machines and own reports. */
package club.emberwell.web.bench;
