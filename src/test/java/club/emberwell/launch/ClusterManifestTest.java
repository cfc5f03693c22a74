package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * The manifests for a cluster, held to the models that the Kubernetes project generates from its
 * own description (io.kubernetes:client-java-api), which refuse an unknown field and a missing one.
 */
class ClusterManifestTest {
  private static final Path MANIFESTS = Path.of("deploy/kubernetes/emberwell.yaml");
  private static final Path COMPOSE = Path.of("deploy/container/compose.yaml");
  private static final Pattern SETTING = Pattern.compile("EMBERWELL_[A-Z_]+");

  private static List<JsonNode> documents(String yaml) throws IOException {
    ObjectMapper mapper = new ObjectMapper(new YAMLFactory());
    try (MappingIterator<JsonNode> all = mapper.readerFor(JsonNode.class).readValues(yaml)) {
      return all.readAll();
    }
  }

  private static void check(JsonNode document) throws ReflectiveOperationException {
    String kind = document.get("kind").asText();
    Class<?> model = Class.forName("io.kubernetes.client.openapi.models.V1" + kind);
    model
        .getMethod("validateJsonElement", JsonElement.class)
        .invoke(null, JsonParser.parseString(document.toString()));
  }

  @Test
  void everyManifestIsWhatAClusterReads() throws Exception {
    List<JsonNode> all = documents(Files.readString(MANIFESTS));
    for (JsonNode each : all) {
      check(each);
    }
    assertEquals(
        List.of("ConfigMap", "Service", "Deployment", "PodDisruptionBudget", "Ingress", "Service"),
        all.stream().map(each -> each.get("kind").asText()).toList());
  }

  /** The check can fail. */
  @Test
  void aMisspeltFieldIsFound() throws Exception {
    String wrong = Files.readString(MANIFESTS).replace("readinessProbe", "readynessProbe");
    JsonNode deployment = documents(wrong).get(2);
    InvocationTargetException found =
        assertThrows(InvocationTargetException.class, () -> check(deployment));
    assertTrue(
        found.getCause().getMessage().contains("readynessProbe"), found.getCause().getMessage());
  }

  /** What selects pods selects those that are made. */
  @Test
  void servicesFindThePods() throws Exception {
    List<JsonNode> all = documents(Files.readString(MANIFESTS));
    JsonNode labels = all.get(2).at("/spec/template/metadata/labels");
    assertEquals(labels, all.get(1).at("/spec/selector"));
    assertEquals(labels, all.get(2).at("/spec/selector/matchLabels"));
    assertEquals(labels, all.get(3).at("/spec/selector/matchLabels"));
  }

  /** Settings of the samples are settings of the server. */
  @Test
  void theSamplesNameSettingsThatThereAre() throws IOException {
    Set<String> known = names(Path.of("deploy/emberwell.env"));
    // of the samples themselves: the name and the image of the club, and the nodes its proxy asks
    known.addAll(
        Set.of("EMBERWELL_SITE", "EMBERWELL_PLAIN", "EMBERWELL_NODES", "EMBERWELL_VERSION"));
    for (Path sample : List.of(MANIFESTS, COMPOSE, Path.of("deploy/container/Containerfile"))) {
      Set<String> unknown = names(sample);
      unknown.removeAll(known);
      unknown.removeIf(each -> known.contains(each.replaceFirst("_FILE$", "")));
      unknown.removeIf(each -> each.endsWith("_"));
      assertEquals(Set.of(), unknown, sample.toString());
    }
  }

  private static Set<String> names(Path file) throws IOException {
    return SETTING
        .matcher(Files.readString(file))
        .results()
        .map(each -> each.group())
        .collect(Collectors.toCollection(HashSet::new));
  }
}
