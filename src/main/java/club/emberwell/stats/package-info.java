/** Quantiles, intervals and fits. Pure. */
package club.emberwell.stats;
