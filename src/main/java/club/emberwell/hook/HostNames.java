package club.emberwell.hook;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;

/** Looks up what addresses a name has. */
interface HostNames {
  /** All of them, at least one. */
  List<InetAddress> of(String host) throws UnknownHostException;
}
