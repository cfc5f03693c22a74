/**
 * Photos of reports, questions and answers: the same operations at each of them ({@link
 * club.emberwell.api.photo.PhotoResource}), and the gallery of a material.
 */
package club.emberwell.api.photo;
