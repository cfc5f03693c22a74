/**
 * A member's bench in one file that any server of this program reads back; its format stands in
 * {@code shared/formats/bench-copy.md}.
 *
 * <p>Entry points: {@link club.emberwell.exchange.bench.BenchCopy} writes one, {@link
 * club.emberwell.exchange.bench.BenchRestore} looks at one and restores it. What lies on a bench is
 * listed once, in {@link club.emberwell.exchange.bench.BenchKind}.
 */
package club.emberwell.exchange.bench;
