package club.emberwell.exchange.open;

import club.emberwell.listing.Csv;
import club.emberwell.member.Licence;
import club.emberwell.quantity.UtcTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * {@code datapackage.json}: the package as the Data Package standard describes one (version 2;
 * readers of version 1 find their {@code profile}), and its table as Table Schema does.
 */
final class Descriptor {
  static final String NAME = "datapackage.json";
  static final String TRIALS = "trials.csv";
  static final String REPORTS = "reports.ndjson";
  static final String WORDS = "words.jsonld";

  private static final String SITE = "https://datapackage.org/profiles/2.0/";

  private static final Map<String, Object> DIALECT =
      Map.of(
          "delimiter", ",",
          "quoteChar", "\"",
          "doubleQuote", true,
          "lineTerminator", "\r\n",
          "header", true);

  private Descriptor() {}

  /**
   * @param made all but its files
   * @param files those that hold data
   */
  static Map<String, Object> of(
      DataPackage made, List<DataFile> files, String clubName, String publicUrl) {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("$schema", SITE + "datapackage.json");
    all.put("profile", "data-package");
    all.put("name", "laser-trials");
    all.put("id", "urn:uuid:" + made.id());
    all.put("title", "Laser trials of " + clubName);
    all.put(
        "description",
        "Settings of laser engravers and how each trial came out, as members reported it. Every"
            + " record says its licence and, where its author wants it, who it is by. Nothing here"
            + " is a recommendation.");
    all.put("homepage", publicUrl + "/data");
    all.put("created", UtcTime.of(made.madeAt()));
    all.put("licenses", made.licences().stream().map(Descriptor::licence).toList());
    all.put(
        "contributors", List.of(Map.of("title", clubName, "role", "publisher", "path", publicUrl)));
    all.put("resources", files.stream().map(Descriptor::resource).toList());
    return all;
  }

  private static Map<String, Object> licence(Licence licence) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("name", licence.code());
    one.put("title", licence.title());
    one.put("path", licence.url());
    return one;
  }

  private static Map<String, Object> resource(DataFile file) {
    Map<String, Object> resource = new LinkedHashMap<>();
    resource.put("name", file.name().substring(0, file.name().indexOf('.')));
    resource.put("path", file.name());
    switch (file.name()) {
      case TRIALS -> table(resource);
      case REPORTS -> resource.put("title", "Reports, one a line, as the API answers them");
      default ->
          resource.put("title", "Words: materials, coatings, colours, defects and codes, as SKOS");
    }
    resource.put("format", file.format());
    resource.put("mediatype", file.mediaType());
    resource.put("encoding", "utf-8");
    resource.put("bytes", file.bytes());
    resource.put("hash", "sha256:" + file.sha256());
    return resource;
  }

  private static void table(Map<String, Object> resource) {
    resource.put("$schema", SITE + "dataresource.json");
    resource.put("type", "table");
    resource.put("profile", "tabular-data-resource");
    resource.put("title", "Trials, one a row");
    resource.put("description", Csv.RULE);
    resource.put("dialect", DIALECT);
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", SITE + "tableschema.json");
    schema.put("fields", TrialTable.COLUMNS.stream().map(Descriptor::field).toList());
    schema.put("primaryKey", List.of("report", "trial"));
    schema.put("missingValues", List.of(""));
    resource.put("schema", schema);
  }

  private static Map<String, Object> field(Column column) {
    Map<String, Object> field = new LinkedHashMap<>();
    field.put("name", column.name());
    field.put("title", column.title());
    field.put("type", column.type());
    if (column.unit() != null) {
      field.put("unit", column.unit());
      field.put("description", "Unit (UCUM): " + column.unit());
    }
    Map<String, Object> constraints = new LinkedHashMap<>();
    if (column.isRequired()) {
      constraints.put("required", true);
    }
    if (!column.codes().isEmpty()) {
      constraints.put("enum", new ArrayList<>(column.codes()));
    }
    if (!constraints.isEmpty()) {
      field.put("constraints", constraints);
    }
    return field;
  }
}
