package club.emberwell.web.frame;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import java.util.Map;

/** Hands out style and scripts under names that no other bytes will ever have. */
@Path("/assets")
public class AssetFiles {
  private static final Map<String, String> TYPES =
      Map.of("css", "text/css;charset=UTF-8", "js", "text/javascript;charset=UTF-8");

  private final Assets assets;

  AssetFiles(Assets assets) {
    this.assets = assets;
  }

  @GET
  @Path("{name}.{hash}.{type}")
  @PermitAll
  public Response file(
      @PathParam("name") String name,
      @PathParam("hash") String hash,
      @PathParam("type") String type) {
    String text = assets.find(name + "." + type, hash).orElseThrow(NotFoundException::new);
    return Response.ok(text, TYPES.get(type))
        .header("Cache-Control", "public, max-age=31536000, immutable")
        .header("Vary", "Accept-Encoding")
        .build();
  }
}
