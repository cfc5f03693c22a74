package club.emberwell.api.photo;

import club.emberwell.entry.EntryKind;
import jakarta.ws.rs.Path;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The pictures of a question. */
@Path("/api/v1/questions")
@Tag(name = "Talk")
public class QuestionPhotoResource extends PhotoResource {
  QuestionPhotoResource(PhotoRequests requests) {
    super(EntryKind.QUESTION, requests);
  }
}
