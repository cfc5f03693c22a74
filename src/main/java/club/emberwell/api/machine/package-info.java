/**
 * A member's machines over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.machine.MachineResource}.
 */
package club.emberwell.api.machine;
