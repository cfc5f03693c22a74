package club.emberwell.access.traffic;

import club.emberwell.access.SecurityHeaders;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundHandlerAdapter;
import io.netty.channel.ChannelPromise;
import io.netty.handler.codec.http.HttpResponse;
import io.netty.handler.codec.http.HttpStatusClass;

/** Puts the headers of every answer on those that the framework gives before it asks anybody. */
final class GuardedAnswers extends ChannelOutboundHandlerAdapter {
  @Override
  public void write(ChannelHandlerContext channel, Object message, ChannelPromise written) {
    if (message instanceof HttpResponse answer
        && answer.status().codeClass() != HttpStatusClass.INFORMATIONAL) {
      SecurityHeaders.ALWAYS.forEach(
          (name, value) -> {
            if (!answer.headers().contains(name)) {
              answer.headers().set(name, value);
            }
          });
    }
    channel.write(message, written);
  }
}
