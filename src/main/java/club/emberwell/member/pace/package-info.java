/**
 * How often, and not twice: {@link club.emberwell.member.pace.Throttle} counts tries and writes,
 * {@link club.emberwell.member.pace.Idempotency} answers a repeated write again.
 */
package club.emberwell.member.pace;
