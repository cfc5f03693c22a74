package club.emberwell.access.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.runtime.OpenApiConstants;
import io.quarkus.smallrye.openapi.runtime.OpenApiDocumentService;
import io.smallrye.openapi.runtime.io.Format;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.commons.codec.digest.DigestUtils;

/** The one description of the API (OpenAPI 3.1), made while the program was built. */
@ApplicationScoped
public class ApiDocument {
  private static final int TAG_LETTERS = 16;

  private final JsonNode tree;
  private final byte[] bytes;
  private final String tag;

  ApiDocument(OpenApiDocumentService documents, ObjectMapper json) {
    try {
      tree =
          json.readTree(documents.getDocument(OpenApiConstants.DEFAULT_DOCUMENT_NAME, Format.JSON));
      bytes = json.writeValueAsBytes(tree);
      tag = DigestUtils.sha256Hex(bytes).substring(0, TAG_LETTERS);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Not to be changed. */
  public JsonNode tree() {
    return tree;
  }

  /** Without needless space, in UTF-8. */
  public byte[] bytes() {
    return bytes.clone();
  }

  /** Changes with the document. */
  public String tag() {
    return tag;
  }
}
