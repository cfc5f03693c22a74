package club.emberwell.api.photo;

import club.emberwell.report.photo.PhotoWords;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * What is said of a photo from now on.
 *
 * @param caption for everybody; left out = none
 * @param alt what can be seen, for those who do not see it; left out = said from the work
 * @param position its place among those of its entry, 1 = the first, which stands for the entry;
 *     left out = it stays where it is
 */
@Schema(name = "PhotoRequest")
record PhotoChange(String caption, String alt, Integer position) {
  PhotoWords words() {
    return new PhotoWords(caption, alt);
  }
}
