package club.emberwell.api.photo;

import club.emberwell.entry.EntryKind;
import jakarta.ws.rs.Path;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The pictures of an answer. */
@Path("/api/v1/answers")
@Tag(name = "Talk")
public class AnswerPhotoResource extends PhotoResource {
  AnswerPhotoResource(PhotoRequests requests) {
    super(EntryKind.ANSWER, requests);
  }
}
