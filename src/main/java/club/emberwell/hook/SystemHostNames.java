package club.emberwell.hook;

import jakarta.enterprise.context.ApplicationScoped;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;

/** As the operating system looks names up. */
@ApplicationScoped
class SystemHostNames implements HostNames {
  @Override
  public List<InetAddress> of(String host) throws UnknownHostException {
    return List.of(InetAddress.getAllByName(host));
  }
}
