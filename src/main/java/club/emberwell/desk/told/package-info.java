/**
 * What the desk tells members by itself: decisions about their entries and answers to their flags,
 * and how far they read ({@link club.emberwell.desk.told.Told}).
 */
package club.emberwell.desk.told;
