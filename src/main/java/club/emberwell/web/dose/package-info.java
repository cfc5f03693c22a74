/** The public calculators: dose, eyes and distances, air. */
package club.emberwell.web.dose;
