/** Pages of the vocabulary: materials, coatings and colours with their cautions. */
package club.emberwell.web.material;
