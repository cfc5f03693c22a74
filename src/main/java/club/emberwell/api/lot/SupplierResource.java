package club.emberwell.api.lot;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.lot.drift.LotDrifts;
import club.emberwell.lot.drift.SharedDrift;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.lot.supplier.Supplier.Blanks;
import club.emberwell.lot.supplier.Supplier.SharedLot;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Role;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;

/** What members who share their lots say together of suppliers, for members. */
@Path("/api/v1/suppliers")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Lots")
public class SupplierResource {
  private final Suppliers suppliers;
  private final LotDrifts drifts;
  private final ApiRequest request;

  SupplierResource(Suppliers suppliers, LotDrifts drifts, ApiRequest request) {
    this.suppliers = suppliers;
    this.drifts = drifts;
    this.request = request;
  }

  /**
   * A supplier with its lots.
   *
   * @param spellings other names that count as its own
   * @param drifts where lots of several members were burned
   */
  record SupplierJson(
      @JsonUnwrapped Supplier supplier,
      List<String> spellings,
      List<Blanks> blanks,
      List<SharedLot> sharedLots,
      List<SharedDrift> drifts) {}

  @GET
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(
      operationId = "listSuppliers",
      summary = "Suppliers by the usable share of their pieces",
      description =
          "Over the lots that members share, by the lower bound of Wilson's 95 % interval. A"
              + " supplier is told of from three such members; never who they are. q: part of a name.")
  public ListJson<Supplier> list(@RestQuery String q, @BeanParam ListQuery list) {
    return ListJson.of(suppliers.ranked(request.actor(), q, list.part()));
  }

  @GET
  @Path("{code}")
  @Operation(
      operationId = "getSupplier",
      summary = "A supplier with the lots that members share",
      description =
          "Of each shared lot its month, its pieces and how many were usable. Of 100 suppliers that"
              + " never change, at most about 6 are flagged within 20 lots. The code of a spelling"
              + " that counts as another name answers with that name's.")
  public SupplierJson get(@PathParam("code") String code) {
    Supplier.Detail found = suppliers.get(request.actor(), code);
    return new SupplierJson(
        found.supplier(),
        found.spellings(),
        found.kinds(),
        found.lots(),
        drifts.shared(request.actor(), found.supplier().code()));
  }
}
