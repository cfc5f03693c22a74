package club.emberwell.member;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;
import java.util.Arrays;
import java.util.stream.Collectors;

/** The licences under which members share, by their SPDX ids: no others are offered. */
public enum Licence implements Coded {
  CC0("CC0-1.0", "CC0 1.0: anybody may use it in any way", "publicdomain/zero/1.0/"),
  CC_BY("CC-BY-4.0", "CC BY 4.0: whoever uses it names the author", "licenses/by/4.0/"),
  CC_BY_SA(
      "CC-BY-SA-4.0",
      "CC BY-SA 4.0: names the author, and shares what comes of it alike",
      "licenses/by-sa/4.0/");

  private static final String SITE = "https://creativecommons.org/";

  @EnumeratedValue private final String code;
  private final String label;
  private final String path;

  Licence(String code, String label, String path) {
    this.code = code;
    this.label = label;
    this.path = path;
  }

  /** The SPDX id. */
  @Override
  public String code() {
    return code;
  }

  /** Its name, and what it asks in a few words. */
  public String label() {
    return label;
  }

  /** Its name alone. */
  public String title() {
    return label.substring(0, label.indexOf(':'));
  }

  /** Where it can be read. */
  public String url() {
    return SITE + path;
  }

  /** All ids in words: "CC0-1.0, CC-BY-4.0 or CC-BY-SA-4.0". */
  public static String codes() {
    String all = Arrays.stream(values()).map(Licence::code).collect(Collectors.joining(", "));
    int last = all.lastIndexOf(", ");
    return all.substring(0, last) + " or " + all.substring(last + 2);
  }
}
