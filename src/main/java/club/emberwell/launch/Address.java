package club.emberwell.launch;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;

/** Where the server listens: a host name or address, and a TCP port. */
record Address(String host, int port) {
  /** What the public address must be; pages and links are made for the root of a host. */
  static final String PUBLIC =
      "an address such as https://club.example: a host name of its own, without a path";

  static final int LAST_PORT = 65_535;

  /**
   * Reads the two settings.
   *
   * @throws LaunchException when one of them is none
   */
  static Address of(String host, String port) {
    try {
      int number = Integer.parseInt(port);
      if (number >= 0 && number <= LAST_PORT) {
        return new Address(host, number);
      }
    } catch (NumberFormatException e) {
      // answered below, as a number out of range is
    }
    throw wrong("The port must be a number from 0 to 65535, not " + port + ".");
  }

  /** How a browser on this machine asks for it. */
  String url() {
    return "http://" + host + ":" + port;
  }

  /** Whether only this machine can reach it. */
  boolean isLoopback() {
    return resolved().isLoopbackAddress();
  }

  /** Refuses with a sentence where something else listens already. */
  void requireFree() {
    try (ServerSocket socket = new ServerSocket()) {
      socket.setReuseAddress(true);
      socket.bind(new InetSocketAddress(resolved(), port));
    } catch (IOException e) {
      throw wrong(
          "Port "
              + port
              + " on "
              + host
              + " cannot be used ("
              + e.getMessage()
              + "); choose another with --port.");
    }
  }

  private InetAddress resolved() {
    try {
      return InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw wrong("The host " + host + " is unknown; set --host to an address of this machine.");
    }
  }

  /** Whether a text can be the one address members use. */
  static boolean isPublicUrl(String text) {
    try {
      URI uri = new URI(text);
      boolean web = "http".equals(uri.getScheme()) || "https".equals(uri.getScheme());
      boolean bare = uri.getRawPath().isEmpty() && uri.getRawQuery() == null;
      boolean plain = uri.getRawFragment() == null && uri.getRawUserInfo() == null;
      boolean port = uri.getPort() != 0 && uri.getPort() <= LAST_PORT;
      return web && uri.getHost() != null && bare && plain && port;
    } catch (URISyntaxException | NullPointerException e) {
      return false;
    }
  }

  private static LaunchException wrong(String sentence) {
    return new LaunchException(ExitCode.WRONG_SETTING, sentence);
  }
}
