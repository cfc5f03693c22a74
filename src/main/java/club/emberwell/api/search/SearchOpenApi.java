package club.emberwell.api.search;

import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQueryCodec;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;

/** Describes the parameters of every operation that takes a search, from where they are defined. */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class SearchOpenApi implements OASFilter {
  private static final List<String> PATHS = List.of("/api/v1/reports", "/api/v1/consensus");

  @Override
  public void filterOpenAPI(OpenAPI api) {
    if (api.getPaths() == null) {
      return;
    }
    for (String path : PATHS) {
      var item = api.getPaths().getPathItem(path);
      if (item != null && item.getGET() != null) {
        parameters().forEach(item.getGET()::addParameter);
        if (path.equals(PATHS.get(0))) {
          item.getGET().addParameter(cursor());
        }
      }
    }
  }

  private static List<Parameter> parameters() {
    List<Parameter> all = new ArrayList<>();
    all.add(
        parameter(SearchQueryCodec.TEXT, text(), "Words; all must be found")
            .schema(text().maxLength(SearchLimits.TEXT)));
    for (Facet facet : Facet.values()) {
      Schema several = OASFactory.createSchema().addType(Schema.SchemaType.ARRAY).items(text());
      all.add(
          parameter(facet.code(), several, facet.label() + "; repeated = any of them")
              .explode(true));
    }
    for (RangeField range : RangeField.all()) {
      String kind =
          range.dimension().map(d -> "with unit, e.g. 1 " + d.canonicalUnit()).orElse("a date");
      all.add(parameter(range.minParameter(), text(), range.label() + ", at least; " + kind));
      all.add(parameter(range.maxParameter(), text(), range.label() + ", at most; " + kind));
    }
    all.add(
        parameter(
            SearchQueryCodec.NEAR,
            text().format("uuid"),
            "One of your machines, to order by closeness"));
    List<Object> orders = Stream.of(Order.values()).<Object>map(Order::code).toList();
    all.add(parameter(SearchQueryCodec.SORT, text().enumeration(orders), "Order of the hits"));
    all.add(parameter(SearchQueryCodec.PAGE, number(0, SearchLimits.PAGE), "From 0"));
    all.add(parameter(SearchQueryCodec.SIZE, number(1, SearchLimits.SIZE), "Hits a page"));
    return all;
  }

  private static Parameter cursor() {
    return parameter("cursor", text(), "next of the page before, as it was; instead of page");
  }

  private static Parameter parameter(String name, Schema schema, String description) {
    return OASFactory.createParameter()
        .name(name)
        .in(Parameter.In.QUERY)
        .required(false)
        .schema(schema)
        .description(description);
  }

  private static Schema text() {
    return OASFactory.createSchema().addType(Schema.SchemaType.STRING);
  }

  private static Schema number(int least, int most) {
    return OASFactory.createSchema()
        .addType(Schema.SchemaType.INTEGER)
        .minimum(BigDecimal.valueOf(least))
        .maximum(BigDecimal.valueOf(most));
  }
}
