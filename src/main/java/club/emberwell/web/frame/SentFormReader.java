package club.emberwell.web.frame;

import io.netty.handler.codec.http.QueryStringDecoder;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.MessageBodyReader;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;

/** Lets pages ask for the {@link SentForm} itself. */
@Provider
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
public class SentFormReader implements MessageBodyReader<SentForm> {
  @Override
  public boolean isReadable(
      Class<?> type, Type genericType, Annotation[] annotations, MediaType mediaType) {
    return type == SentForm.class;
  }

  @Override
  public SentForm readFrom(
      Class<SentForm> type,
      Type genericType,
      Annotation[] annotations,
      MediaType mediaType,
      MultivaluedMap<String, String> headers,
      InputStream body)
      throws IOException {
    String text = new String(body.readAllBytes(), StandardCharsets.UTF_8);
    return new SentForm(new QueryStringDecoder(text, false).parameters());
  }
}
