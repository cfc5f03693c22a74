package club.emberwell.api.contract;

import club.emberwell.api.json.CodesOpenApi;
import club.emberwell.bench.PulseControl;
import club.emberwell.catalog.TermKind;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryKind;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.member.Licence;
import club.emberwell.member.Scope;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.recipe.CameFrom;
import club.emberwell.report.photo.PhotoSize;
import club.emberwell.search.query.Order;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;

/**
 * The texts that are words of a catalogue, where a record holds them as text: those that are sent,
 * since whatever else is there is refused at its field. And which fields have to be sent.
 */
final class ClosedWords {
  /** By schema and property. */
  private static final Map<String, List<Object>> WORDS =
      Map.ofEntries(
          Map.entry(
              "CautionEvidence.confidence", List.of("read", "second-hand", "memory", "judgement")),
          Map.entry(
              "CautionProposal.state", List.of("waiting", "accepted", "declined", "withdrawn")),
          Map.entry("CautionScope.processes", of(Process.class)),
          Map.entry("CautionScope.sources", of(LaserSource.class)),
          Map.entry("CameFrom.way", of(CameFrom.Way.class)),
          Map.entry("Club.reading", List.of("public", "members")),
          Map.entry("ClubRequest.dataLicence", of(Licence.class)),
          Map.entry("ClubRequest.door", of(Door.class)),
          Map.entry("ClubRequest.reading", List.of("public", "members")),
          Map.entry("Derived.basis", List.of("nominal")),
          Map.entry("DoseRequest.process", of(Process.class)),
          Map.entry("FoundReports.sort", of(Order.class)),
          Map.entry("GridRequest.process", of(Process.class)),
          Map.entry("MachineRequest.motion", of(Motion.class)),
          Map.entry("MachineRequest.pulseControl", of(PulseControl.class)),
          Map.entry("MachineRequest.regime", of(Regime.class)),
          Map.entry("MachineRequest.source", of(LaserSource.class)),
          Map.entry("NewToken.scopes", of(Scope.class)),
          Map.entry("Preferences.numberStyle", of(NumberStyle.class)),
          Map.entry("RecipeReportRequest.effect", of(Effect.class)),
          Map.entry("RecipeRequest.process", of(Process.class)),
          Map.entry("ReportRequest.effect", of(Effect.class)),
          Map.entry("ReportRequest.process", of(Process.class)),
          Map.entry("Ties.process", of(Process.class)),
          Map.entry("Ties.source", of(LaserSource.class)),
          Map.entry("Token.scopes", of(Scope.class)),
          Map.entry("TokenRequest.scopes", of(Scope.class)),
          Map.entry(
              "WrittenAxis.setting",
              Stream.of(Setting.values()).<Object>map(Setting::code).toList()),
          Map.entry("WrittenGrid.process", of(Process.class)),
          Map.entry("WrittenLaser.motion", of(Motion.class)),
          Map.entry("WrittenLaser.regime", of(Regime.class)),
          Map.entry("WrittenLaser.source", of(LaserSource.class)),
          Map.entry("WrittenRecipe.process", of(Process.class)),
          Map.entry("WrittenTrial.effect", of(Effect.class)));

  /** By schema. */
  private static final Map<String, List<String>> NEEDED =
      Map.ofEntries(
          Map.entry("DoseRequest", List.of("laser", "process", "settings")),
          Map.entry("MachineRequest", List.of("name", "source")),
          Map.entry("RecipeReportRequest", List.of("effect")),
          Map.entry("RecipeRequest", List.of("machine", "process", "material", "settings")),
          Map.entry("ReportRequest", List.of("process", "material")),
          Map.entry("WrittenAxis", List.of("setting")),
          Map.entry("WrittenLaser", List.of("source")));

  private ClosedWords() {}

  static void mend(Map<String, Schema> schemas) {
    WORDS.forEach(
        (place, words) -> {
          Schema holder = known(schemas, place.substring(0, place.indexOf('.')));
          Schema text = known(holder.getProperties(), place.substring(place.indexOf('.') + 1));
          (text.getItems() == null ? text : text.getItems()).setEnumeration(words);
        });
    judged(known(schemas, "WrittenResults").getProperties().get("effects"));
    NEEDED.forEach((name, fields) -> known(schemas, name).setRequired(fields));
  }

  /** A name that went away fails the build, so that none of these lines outlives its field. */
  private static Schema known(Map<String, Schema> all, String name) {
    Schema found = all.get(name);
    if (found == null || found.getRef() != null) {
      throw new IllegalStateException("no such text in the API: " + name);
    }
    return found;
  }

  /** A matrix of effects; null where a test is not judged. */
  private static void judged(Schema effects) {
    List<Object> words = new ArrayList<>(of(Effect.class));
    words.add(null);
    effects.getItems().getItems().addType(Schema.SchemaType.NULL).setEnumeration(words);
  }

  /** Those in an address. */
  static void mend(String path, Operation operation) {
    if (operation.getParameters() == null) {
      return;
    }
    for (Parameter parameter : operation.getParameters()) {
      List<Object> words = inAddress(path, parameter.getName());
      if (!words.isEmpty() && parameter.getSchema() != null) {
        parameter.getSchema().setEnumeration(words);
      }
    }
  }

  private static List<Object> inAddress(String path, String name) {
    return switch (name) {
      case "kind" ->
          path.contains("/terms/")
              ? of(TermKind.class)
              : path.contains("{kind}") ? of(EntryKind.class) : List.of();
      case "code" -> path.contains("/rules/") ? of(RuleCode.class) : List.of();
      case "dimension" -> of(QuantityKind.class);
      case "size" -> path.endsWith("{photo}") ? of(PhotoSize.class) : List.of();
      default -> List.of();
    };
  }

  private static List<Object> of(Class<? extends Enum<?>> words) {
    return CodesOpenApi.codes(words.getName());
  }
}
