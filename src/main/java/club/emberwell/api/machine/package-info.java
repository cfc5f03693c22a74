/** A member's machines over JSON. */
package club.emberwell.api.machine;
