/** One's own bench as a whole; entry point: {@link club.emberwell.api.bench.BenchCopyResource}. */
package club.emberwell.api.bench;
