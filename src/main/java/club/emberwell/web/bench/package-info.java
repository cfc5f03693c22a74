/**
 * Pages of the bench: a member's machines and own reports.
 *
 * <p>Entry points: {@link club.emberwell.web.bench.BenchPages}; {@link
 * club.emberwell.web.bench.MachinePages}.
 */
package club.emberwell.web.bench;
