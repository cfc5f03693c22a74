package club.emberwell.web.data;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.exchange.open.SearchExport;
import club.emberwell.member.Role;
import club.emberwell.remark.Remarks;
import club.emberwell.search.MatchedTrials;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.query.SearchQueryCodec.Parsed;
import club.emberwell.web.frame.Pages;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Set;

/** What a search found, as a file: under the address of its page, every trial and no page. */
@Path("/")
@Blocking
@RolesAllowed(Role.READ)
public class SearchFiles extends Pages {
  private final SearchExport export;
  private final CatalogService catalog;

  SearchFiles(SearchExport export, CatalogService catalog) {
    this.export = export;
    this.catalog = catalog;
  }

  /** Writes what was found. */
  private interface Format {
    void write(MatchedTrials found, OutputStream out) throws IOException;
  }

  @GET
  @Path("search.csv")
  @Produces("text/csv")
  public Response csv(@Context UriInfo uri) {
    return file(uri, export::csv, "text/csv;charset=UTF-8;header=present", "csv");
  }

  @GET
  @Path("search.json")
  @Produces("application/json")
  public Response json(@Context UriInfo uri) {
    return file(uri, export::json, "application/json", "json");
  }

  private Response file(UriInfo uri, Format format, String type, String ending) {
    Parsed parsed =
        SearchQueryCodec.read(
            uri.getQueryParameters(),
            catalog.snapshot().vocabulary(),
            Set.of("machine", "spacing"),
            actor().units().style());
    Remarks.refuse(parsed.problems());
    MatchedTrials found = export.find(parsed.query());
    StreamingOutput body = out -> format.write(found, out);
    return Response.ok(body, type)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            "attachment; filename=\"" + name(found) + "." + ending + "\"")
        .build();
  }

  /** Says where something was left out, since a table has no other place for it. */
  private static String name(MatchedTrials found) {
    int here = found.here();
    return here == found.total() ? "search" : "search-first-" + here + "-of-" + found.total();
  }
}
