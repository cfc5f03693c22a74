package club.emberwell.access.traffic;

import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.vertx.core.http.HttpVersion;
import io.vertx.core.net.impl.ConnectionBase;
import io.vertx.ext.web.RoutingContext;
import java.time.Duration;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/**
 * Hangs up where the head of a request does not end in time after its first byte. The framework
 * knows a limit for silence only, and a byte now and then is no silence.
 */
final class HeadDeadline extends ChannelInboundHandlerAdapter {
  /** By this name the framework's own end of a connection is known. */
  private static final String FRAMEWORK = "handler";

  private final Duration time;
  private boolean waitsForHead = true;
  private ScheduledFuture<?> end;

  HeadDeadline(Duration time) {
    this.time = time;
  }

  /** The head of this request is there; once it is answered the next one is waited for. */
  static void headIsThere(RoutingContext routing) {
    Channel channel = ((ConnectionBase) routing.request().connection()).channel();
    HeadDeadline deadline = channel.pipeline().get(HeadDeadline.class);
    if (deadline == null) {
      return;
    }
    deadline.stop();
    // of HTTP/2 many requests run at once, and silence ends the connection
    if (routing.request().version() != HttpVersion.HTTP_2) {
      routing.addEndHandler(answered -> deadline.waitsForHead = true);
    }
  }

  @Override
  public void channelActive(ChannelHandlerContext channel) {
    if (channel.pipeline().get(FRAMEWORK) != null) {
      channel.pipeline().addBefore(FRAMEWORK, null, new GuardedAnswers());
    }
    channel.fireChannelActive();
  }

  @Override
  public void channelRead(ChannelHandlerContext channel, Object bytes) {
    if (waitsForHead && end == null) {
      end =
          channel
              .executor()
              .schedule(() -> channel.close(), time.toMillis(), TimeUnit.MILLISECONDS);
    }
    channel.fireChannelRead(bytes);
  }

  @Override
  public void channelInactive(ChannelHandlerContext channel) {
    stop();
    channel.fireChannelInactive();
  }

  private void stop() {
    waitsForHead = false;
    if (end != null) {
      end.cancel(false);
      end = null;
    }
  }
}
