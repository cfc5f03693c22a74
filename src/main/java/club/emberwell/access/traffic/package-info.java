/**
 * What arrives before anybody has read it: connections, heads, bodies, and how much of each one
 * address may have open, by {@link club.emberwell.access.traffic.TrafficLimits}. All of it happens
 * on event loops, so that whoever sends slowly takes no thread from those who do not.
 */
package club.emberwell.access.traffic;
