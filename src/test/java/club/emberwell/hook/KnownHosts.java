package club.emberwell.hook;

import io.quarkus.test.Mock;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** No test asks a name server: names have the addresses a test says. */
@Mock
@ApplicationScoped
public class KnownHosts implements HostNames {
  private final Map<String, List<InetAddress>> known = new ConcurrentHashMap<>();

  /** From now on the name has these addresses. */
  public void say(String host, InetAddress... addresses) {
    known.put(host, List.of(addresses));
  }

  @Override
  public List<InetAddress> of(String host) throws UnknownHostException {
    List<InetAddress> found = known.get(host);
    if (found == null) {
      throw new UnknownHostException(host);
    }
    return found;
  }
}
