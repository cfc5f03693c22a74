package club.emberwell.api.view;

import club.emberwell.listing.Part;
import club.emberwell.listing.PartRefused;
import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** What is asked of a list: see {@link ListJson}. */
public class ListQuery {
  @QueryParam("cursor")
  @Parameter(description = "next of the page before, as it was; left out for the first page.")
  String cursor;

  @QueryParam("size")
  @Parameter(
      description = "Rows on a page.",
      schema = @Schema(type = SchemaType.INTEGER, minimum = "1", maximum = "100"))
  String size;

  /** The first rows, where there is no place to go on from. */
  public Part first() {
    return part().byNumber();
  }

  /**
   * The part that is asked for.
   *
   * @throws PartRefused for a size that is none
   */
  public Part part() {
    return Part.after(cursor, size);
  }
}
