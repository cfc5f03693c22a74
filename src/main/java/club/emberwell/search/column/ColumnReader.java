package club.emberwell.search.column;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;

/**
 * Reads the columns of every trial that matches, segment by segment and column by column, which
 * keeps each column's decoder in the processor's cache.
 */
public final class ColumnReader {
  /** The properties whose codes are numbers given out while reading, with their index fields. */
  private static final Map<Property, String> NAMED = named();

  private static Map<Property, String> named() {
    Map<Property, String> fields = new HashMap<>();
    fields.put(Property.LENS, Columns.LENS);
    fields.put(Property.UNFILED, Columns.UNFILED);
    Property.WORK.forEach((property, facet) -> fields.put(property, facet.field()));
    return Map.copyOf(fields);
  }

  private record Part(LeafReader leaf, int[] documents) {}

  private final List<Part> parts = new ArrayList<>();
  private final int size;

  private ColumnReader(IndexSearcher searcher, Query query) throws IOException {
    Documents.matching(searcher, query, (leaf, found) -> parts.add(new Part(leaf, found)));
    size = parts.stream().mapToInt(part -> part.documents().length).sum();
  }

  public static TrialColumns read(IndexSearcher searcher, Query query, Vocabulary vocabulary)
      throws IOException {
    return new ColumnReader(searcher, query).columns(vocabulary);
  }

  private TrialColumns columns(Vocabulary vocabulary) throws IOException {
    long[] codes = numbers(Columns.CODES);
    int[][] properties = new int[Property.all().size()][];
    Map<Property, List<String>> names = new HashMap<>();
    for (var packed : PackedCodes.OF_PROPERTY.entrySet()) {
      properties[packed.getKey().place()] = unpack(codes, packed.getValue());
    }
    for (var named : NAMED.entrySet()) {
      List<String> found = new ArrayList<>();
      properties[named.getKey().place()] = named(named.getValue(), found);
      names.put(named.getKey(), found);
    }
    return new TrialColumns(
        size,
        new TrialColumns.Who(
            numbers(Columns.MEMBER),
            numbers(Columns.MACHINE),
            numbers(Columns.REPORT),
            Arrays.stream(numbers(Columns.TRIAL)).mapToInt(Math::toIntExact).toArray()),
        new TrialColumns.Apart(
            bytes(codes, PackedCodes.PROCESS),
            bytes(codes, PackedCodes.BAND),
            bytes(codes, PackedCodes.REGIME)),
        bytes(codes, PackedCodes.EFFECT),
        measures(codes),
        properties,
        new ColumnLabels(names, vocabulary));
  }

  private double[][] measures(long[] codes) throws IOException {
    double[][] values = new double[Measure.all().size()][];
    for (Measure measure : Measure.all()) {
      if (!measure.isPacked()) {
        values[measure.place()] = reals(measure.field());
      }
    }
    double[] passes = new double[size];
    double[] quality = new double[size];
    for (int i = 0; i < size; i++) {
      passes[i] = PackedCodes.PASSES.raw(codes[i]);
      int given = PackedCodes.QUALITY.code(codes[i]);
      quality[i] = given < 0 ? Double.NaN : given;
    }
    values[Measure.PASSES.place()] = passes;
    values[Measure.QUALITY.place()] = quality;
    return values;
  }

  private long[] numbers(String field) throws IOException {
    long[] column = new long[size];
    int next = 0;
    for (Part part : parts) {
      NumericDocValues values = DocValues.getNumeric(part.leaf(), field);
      for (int document : part.documents()) {
        column[next++] = Documents.number(values, document);
      }
    }
    return column;
  }

  private double[] reals(String field) throws IOException {
    double[] column = new double[size];
    int next = 0;
    for (Part part : parts) {
      NumericDocValues values = DocValues.getNumeric(part.leaf(), field);
      for (int document : part.documents()) {
        column[next++] = Documents.real(values, document);
      }
    }
    return column;
  }

  private static byte[] bytes(long[] codes, PackedCodes code) {
    byte[] column = new byte[codes.length];
    for (int i = 0; i < codes.length; i++) {
      column[i] = (byte) code.raw(codes[i]);
    }
    return column;
  }

  private static int[] unpack(long[] codes, PackedCodes code) {
    int[] column = new int[codes.length];
    for (int i = 0; i < codes.length; i++) {
      column[i] = code.code(codes[i]);
    }
    return column;
  }

  private int[] named(String field, List<String> names) throws IOException {
    Map<String, Integer> known = new HashMap<>();
    int[] column = new int[size];
    int next = 0;
    for (Part part : parts) {
      SortedDocValues values = DocValues.getSorted(part.leaf(), field);
      int[] here = new int[values.getValueCount()];
      Arrays.fill(here, Integer.MIN_VALUE);
      for (int document : part.documents()) {
        int ordinal = values.advanceExact(document) ? values.ordValue() : -1;
        if (ordinal >= 0 && here[ordinal] == Integer.MIN_VALUE) {
          here[ordinal] = number(values.lookupOrd(ordinal).utf8ToString(), known, names);
        }
        column[next++] = ordinal < 0 ? -1 : here[ordinal];
      }
    }
    return column;
  }

  private static int number(String value, Map<String, Integer> known, List<String> names) {
    if (value.equals(Facet.NOT_FILED)) {
      return TrialColumns.NOT_FILED;
    }
    if (value.isEmpty() || value.equals(Facet.NOT_GIVEN)) {
      return TrialColumns.NOT_GIVEN;
    }
    return known.computeIfAbsent(
        value,
        key -> {
          names.add(key);
          return names.size() - 1;
        });
  }
}
