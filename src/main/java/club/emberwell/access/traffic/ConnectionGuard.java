package club.emberwell.access.traffic;

import club.emberwell.access.TrustedProxies;
import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.ServerChannel;
import io.smallrye.config.SmallRyeConfig;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.microprofile.config.ConfigProvider;

/**
 * Looks at each connection as it is accepted, before a byte of it is read. Netty loads it where the
 * system property {@link ChannelInitializerExtension#EXTENSIONS_SYSTEM_PROPERTY} says {@code
 * serviceload}, which the launcher sees to.
 */
public final class ConnectionGuard extends ChannelInitializerExtension {
  private static final Queue<ServerChannel> LISTENERS = new ConcurrentLinkedQueue<>();

  private Rules rules;

  /** What an operator set; read when the first connection comes, for then it can be read. */
  private record Rules(TrafficLimits limits, TrustedProxies proxies, PerAddress open) {
    static Rules read() {
      SmallRyeConfig config = ConfigProvider.getConfig().unwrap(SmallRyeConfig.class);
      TrafficLimits limits = config.getConfigMapping(TrafficLimits.class);
      return new Rules(
          limits,
          new TrustedProxies(config.getOptionalValues("emberwell.trusted-proxies", String.class)),
          new PerAddress(limits.connectionsOfOne(), Integer.MAX_VALUE));
    }
  }

  private synchronized Rules rules() {
    if (rules == null) {
      rules = Rules.read();
    }
    return rules;
  }

  /** Takes no more connections; those that are open go on. */
  public static void stopAccepting() {
    LISTENERS.forEach(listener -> listener.close().syncUninterruptibly());
  }

  @Override
  public void postInitializeServerListenerChannel(ServerChannel listener) {
    LISTENERS.add(listener);
  }

  @Override
  public void postInitializeServerChildChannel(Channel connection) {
    Rules now = rules();
    connection.pipeline().addFirst(new HeadDeadline(now.limits().headTime()));
    String address = address(connection.remoteAddress());
    if (address == null || now.proxies().trusts(address)) {
      return;
    }
    String network = TrustedProxies.network(address);
    if (now.open().enter(network)) {
      connection.closeFuture().addListener(closed -> now.open().leave(network));
    } else {
      connection.pipeline().addFirst(new HangUp());
    }
  }

  private static String address(SocketAddress remote) {
    return remote instanceof InetSocketAddress peer ? peer.getAddress().getHostAddress() : null;
  }

  /** One that may not stay is closed as soon as its event loop has it. */
  private static final class HangUp extends ChannelInboundHandlerAdapter {
    @Override
    public void channelActive(ChannelHandlerContext channel) {
      channel.close();
    }
  }
}
