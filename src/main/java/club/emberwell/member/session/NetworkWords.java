package club.emberwell.member.session;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The networks by which tries are counted, as people write them (RFC 4632, RFC 4291). */
public final class NetworkWords {
  private static final String UNKNOWN = "unknown";
  private static final Pattern PREFIX = Pattern.compile("(4|16):((?:[0-9a-f]{2}){1,16})");

  private NetworkWords() {}

  /** E.g. {@code 192.0.2.0/24} of {@code 4:c00002}. */
  public static String of(String addressPrefix) {
    Matcher prefix = PREFIX.matcher(addressPrefix == null ? "" : addressPrefix);
    if (!prefix.matches()) {
      return UNKNOWN;
    }
    byte[] kept = HexFormat.of().parseHex(prefix.group(2));
    try {
      byte[] whole = Arrays.copyOf(kept, Integer.parseInt(prefix.group(1)));
      String address = InetAddress.getByAddress(whole).getHostAddress();
      return address + "/" + kept.length * Byte.SIZE;
    } catch (UnknownHostException e) {
      return UNKNOWN;
    }
  }
}
