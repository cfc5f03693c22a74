/**
 * What a stranger sees, frozen: the OpenAPI document, answers of the API and pages of a little club
 * the test builds itself ({@code club.yaml}), compared with files. {@link
 * club.emberwell.frozen.FrozenTest} is the way in; {@code -Dfrozen.update=true} writes the files
 * anew, and each difference is then a decision for whoever reads the commit.
 */
package club.emberwell.frozen;
