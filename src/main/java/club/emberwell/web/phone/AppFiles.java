package club.emberwell.web.phone;

import club.emberwell.web.frame.Assets;
import club.emberwell.web.frame.PageFrame;
import club.emberwell.web.phone.Manifest.Colours;
import club.emberwell.web.phone.Manifest.Icon;
import club.emberwell.web.phone.Manifest.Shortcut;
import club.emberwell.web.phone.Manifest.Where;
import club.emberwell.web.phone.Manifest.Words;
import io.smallrye.common.annotation.Blocking;
import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.stream.Stream;

/**
 * What makes the site an app on a phone: its manifest, and the service worker, which sees all pages
 * because its address is at the root.
 */
@Path("/")
@Blocking
public class AppFiles {
  private static final List<String> WORKER =
      List.of("kept.js", "outbox.js", "pages.js", "worker.js");
  private static final String PNG = "image/png";
  private static final String ANY = "any";

  /** The paper of the light scheme in base.css. */
  private static final String PAPER = "#faf6ef";

  private final PageFrame page;
  private final Assets assets;

  AppFiles(PageFrame page, Assets assets) {
    this.page = page;
    this.assets = assets;
  }

  @GET
  @Path("manifest.webmanifest")
  @Produces("application/manifest+json")
  @PermitAll
  public Manifest manifest() {
    return new Manifest(
        new Words(
            page.getClubName(),
            "Emberwell",
            "Laser settings that members tested, test grids and questions.",
            "en",
            "ltr"),
        new Where("/", "/", "/"),
        "standalone",
        new Colours(PAPER, PAPER),
        List.of(
            new Icon("/assets/icons/192.png", "192x192", PNG, ANY),
            new Icon("/assets/icons/512.png", "512x512", PNG, ANY),
            new Icon("/assets/icons/maskable-512.png", "512x512", PNG, "maskable")),
        List.of(
            new Shortcut("My test grids", "/grids"),
            new Shortcut("Post a result", "/post"),
            new Shortcut("What waits on this phone", "/waiting")));
  }

  /** Another text with each version of the program, which makes browsers replace the old one. */
  @GET
  @Path("sw.js")
  @Produces("text/javascript;charset=UTF-8")
  @PermitAll
  public Response worker() {
    List<String> kept =
        Stream.of(
                page.getStyleSheets(),
                page.getScripts(),
                List.of(page.asset("waiting.js"), "/assets/mark.svg"))
            .flatMap(List::stream)
            .toList();
    JsonObject build =
        new JsonObject().put("stamp", assets.stamp()).put("assets", new JsonArray(kept));
    String text =
        """
        "use strict";
        const BUILD = %s;
        %s
        """
            .formatted(build.encode(), Assets.text(WORKER));
    return Response.ok(text)
        .header("Cache-Control", "no-cache")
        .header("Service-Worker-Allowed", "/")
        .build();
  }
}
