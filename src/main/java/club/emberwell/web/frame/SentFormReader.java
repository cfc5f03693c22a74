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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.server.core.CurrentRequestManager;
import org.jboss.resteasy.reactive.server.core.multipart.FormData;
import org.jboss.resteasy.reactive.server.multipart.FormValue;

/** Lets pages ask for the {@link SentForm} itself. */
@Provider
@Consumes({MediaType.APPLICATION_FORM_URLENCODED, MediaType.MULTIPART_FORM_DATA})
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
    return MediaType.MULTIPART_FORM_DATA_TYPE.isCompatible(mediaType)
        ? parts(CurrentRequestManager.get().getFormData())
        : read(body);
  }

  /** As they were parsed already, for the token in them. */
  private static SentForm parts(FormData sent) throws IOException {
    Map<String, List<String>> texts = new LinkedHashMap<>();
    Map<String, List<Path>> files = new LinkedHashMap<>();
    for (String name : sent) {
      for (FormValue value : sent.get(name)) {
        if (!value.isFileItem()) {
          texts.computeIfAbsent(name, n -> new ArrayList<>()).add(value.getValue());
        } else if (value.getFileItem().getFileSize() > 0) {
          files.computeIfAbsent(name, n -> new ArrayList<>()).add(value.getFileItem().getFile());
        }
      }
    }
    return new SentForm(texts, files);
  }

  private static SentForm read(InputStream body) throws IOException {
    String text = new String(body.readAllBytes(), StandardCharsets.UTF_8);
    return new SentForm(new QueryStringDecoder(text, false).parameters());
  }
}
