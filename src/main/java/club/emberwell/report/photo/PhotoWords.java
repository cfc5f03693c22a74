package club.emberwell.report.photo;

import club.emberwell.bench.FieldReader;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remarks;

/**
 * What is said of a photo.
 *
 * @param caption for everybody, or null
 * @param alt what can be seen, for those who do not see it, or null
 */
public record PhotoWords(String caption, String alt) {
  public static final PhotoWords NONE = new PhotoWords(null, null);

  /** Characters of a caption. */
  public static final int CAPTION = 200;

  /** Characters of what can be seen. */
  public static final int ALT = 300;

  /**
   * The same without space around it.
   *
   * @throws EntryRefused where a text cannot be kept
   */
  public PhotoWords checked() {
    return checked("");
  }

  /**
   * The same of one of several.
   *
   * @param pointer where it stands among what was sent
   */
  public PhotoWords checked(String pointer) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String read = in.text(pointer + "/caption", caption, CAPTION, false);
    String seen = in.text(pointer + "/alt", alt, ALT, false);
    Remarks.refuse(in.remarks());
    return new PhotoWords(read, seen);
  }
}
