package club.emberwell.web.outside;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.listed.ListedEntries;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.caution.TermLink;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;

/**
 * What search engines are told: where not to look (RFC 9309), and what there is (sitemaps.org 0.9).
 */
@Path("/")
@Blocking
public class CrawlerFiles {
  private static final String XML = "application/xml;charset=UTF-8";
  private static final String MAPS = "/sitemap-";

  /** The map of what is not an entry. */
  private static final String PLACES = "places";

  private static final List<String> PAGES =
      List.of(
          "/",
          "/ask",
          "/notices",
          "/materials",
          "/dose",
          "/dose/eyes",
          "/dose/air",
          "/data",
          "/about");

  private final ListedEntries entries;
  private final CatalogService catalog;
  private final ClubOptions club;
  private final PublicUrl url;

  CrawlerFiles(ListedEntries entries, CatalogService catalog, ClubOptions club, PublicUrl url) {
    this.entries = entries;
    this.catalog = catalog;
    this.club = club;
    this.url = url;
  }

  @GET
  @Path("robots.txt")
  @Produces("text/plain;charset=UTF-8")
  @PermitAll
  public String robots() {
    return club.readingPublic() ? Robots.open(url.of("/sitemap.xml")) : Robots.CLOSED;
  }

  /** The maps there are; each lies at the root, since a map speaks only of what lies below it. */
  @GET
  @Path("sitemap.xml")
  @Produces(XML)
  @RolesAllowed(Role.READ)
  public Response maps(@Context Request request, @Context HttpHeaders headers) {
    Sitemap maps = Sitemap.ofMaps();
    maps.add(url.of(MAPS + PLACES + ".xml"), null);
    List<ListedEntries.Part> parts = entries.parts();
    parts.forEach(part -> maps.add(url.of(MAPS + part.number() + ".xml"), part.updated()));
    Instant last =
        parts.stream()
            .map(ListedEntries.Part::updated)
            .max(Instant::compareTo)
            .orElse(Instant.EPOCH);
    return Unchanged.or(maps.bytes(), last, request, headers).build();
  }

  @GET
  @Path("sitemap-{name}.xml")
  @Produces(XML)
  @RolesAllowed(Role.READ)
  public Response map(
      @RestPath String name, @Context Request request, @Context HttpHeaders headers) {
    Sitemap pages = Sitemap.ofPages();
    if (name.equals(PLACES)) {
      PAGES.forEach(page -> pages.add(url.of(page), null));
      terms().forEach(term -> pages.add(url.of(TermLink.address(term)), null));
      return Unchanged.or(pages.bytes(), Instant.EPOCH, request, headers).build();
    }
    List<ListedEntries.Listed> some =
        name.matches("\\d{1,9}") ? entries.part(Integer.parseInt(name)) : List.of();
    if (some.isEmpty()) {
      throw Problems.notFound().exception();
    }
    some.forEach(entry -> pages.add(url.of(entry.path()), entry.updated()));
    Instant last =
        some.stream().map(ListedEntries.Listed::updated).max(Instant::compareTo).orElseThrow();
    return Unchanged.or(pages.bytes(), last, request, headers).build();
  }

  private Stream<Term> terms() {
    return Stream.of(TermKind.MATERIAL, TermKind.COATING)
        .flatMap(kind -> catalog.vocabulary().terms(kind).stream())
        .filter(term -> !term.deprecated());
  }
}
