/** What goes in and out of a club as files: the scenario of the demo, later exports and imports. */
package club.emberwell.exchange;
