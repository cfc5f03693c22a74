/**
 * What resources share: {@link club.emberwell.api.writes.ApiRequest} says who asks, about which
 * version and under which idempotency key.
 */
package club.emberwell.api.writes;
