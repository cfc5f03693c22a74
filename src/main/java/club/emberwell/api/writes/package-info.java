/** What every write of the API shares: one answer per idempotency key, unknown fields refused. */
package club.emberwell.api.writes;
