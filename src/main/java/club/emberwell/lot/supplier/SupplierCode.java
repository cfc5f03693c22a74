package club.emberwell.lot.supplier;

import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * The code by which a supplier stands in addresses: of its name without what differs from member to
 * member, case and space. The column {@code supplier_code} says the same.
 */
public final class SupplierCode {
  private static final int LENGTH = 12;
  private static final Pattern SPACE = Pattern.compile("\\s+");

  private SupplierCode() {}

  public static String of(String name) {
    String key = SPACE.matcher(name.strip()).replaceAll(" ").toLowerCase(Locale.ROOT);
    return DigestUtils.md5Hex(key).substring(0, LENGTH);
  }
}
