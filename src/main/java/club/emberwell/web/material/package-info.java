/**
 * Pages of the vocabulary: materials, coatings and colours with their cautions.
 *
 * <p>Entry points: {@link club.emberwell.web.material.MaterialPages}.
 */
package club.emberwell.web.material;
