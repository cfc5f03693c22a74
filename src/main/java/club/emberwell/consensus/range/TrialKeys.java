package club.emberwell.consensus.range;

import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which key each trial has. */
final class TrialKeys {
  private final TrialColumns columns;
  private final Map<Facet, Values> values = new EnumMap<>(Facet.class);
  private final Map<Code, Integer> known = new HashMap<>();
  private final List<RangeKey> keys = new ArrayList<>();
  private final int[] of;

  /** The values of one part, numbered so that those which respond alike have one number. */
  private static final class Values {
    private final int[] numbers;
    private final List<WorkKey.Part> parts = new ArrayList<>();
    private final Map<String, Integer> known = new HashMap<>();
    private final TrialColumns.PropertyLabels labels;
    private final Property property;

    Values(TrialColumns columns, Facet facet) {
      property = Property.of(facet.code());
      labels = columns.labels();
      int[] codes = columns.property(property);
      int[] unfiled = columns.property(Property.UNFILED);
      Map<Integer, Integer> filed = new HashMap<>();
      Map<Integer, Integer> written = new HashMap<>();
      numbers = new int[codes.length];
      int last = Integer.MIN_VALUE;
      for (int row = 0; row < codes.length; row++) {
        if (codes[row] == TrialColumns.NOT_FILED) {
          numbers[row] = written.computeIfAbsent(unfiled[row], this::ofWritten);
          last = Integer.MIN_VALUE;
        } else if (row > 0 && codes[row] == last) {
          numbers[row] = numbers[row - 1];
        } else {
          last = codes[row];
          numbers[row] = filed.computeIfAbsent(last, this::ofFiled);
        }
      }
    }

    private int ofFiled(int code) {
      if (code < 0) {
        return number(new WorkKey.Part(Facet.NOT_GIVEN, "not stated"), Facet.NOT_GIVEN);
      }
      TrialColumns.Named alike = labels.alike(property, code);
      return number(new WorkKey.Part(alike.value(), alike.label()), alike.value());
    }

    private int ofWritten(int code) {
      String words = labels.label(Property.UNFILED, code);
      return number(
          new WorkKey.Part(Facet.NOT_FILED, words + " (not filed yet)"),
          Facet.NOT_FILED + " " + words);
    }

    private int number(WorkKey.Part part, String apart) {
      return known.computeIfAbsent(
          apart,
          key -> {
            parts.add(part);
            return parts.size() - 1;
          });
    }

    int number(int row) {
      return numbers[row];
    }
  }

  /** What keeps a trial apart, in numbers: all of its light and process in one, then its work. */
  private record Code(int apart, int first, int second, int third) {}

  private TrialKeys(TrialColumns columns) {
    this.columns = columns;
    this.of = new int[columns.size()];
    Code last = null;
    for (int row = 0; row < of.length; row++) {
      Code code = code(row);
      int at = row;
      of[row] = code.equals(last) ? of[row - 1] : known.computeIfAbsent(code, key -> add(at));
      last = code;
    }
  }

  static TrialKeys of(TrialColumns columns) {
    return new TrialKeys(columns);
  }

  int size() {
    return keys.size();
  }

  RangeKey key(int number) {
    return keys.get(number);
  }

  int of(int row) {
    return of[row];
  }

  private Process process(int row) {
    return Process.values()[columns.process()[row]];
  }

  private int nm(int row) {
    boolean other = columns.band()[row] == WavelengthBand.OTHER.ordinal();
    return other ? RangeKey.Light.step(columns.values(Measure.WAVELENGTH)[row]) : 0;
  }

  private Code code(int row) {
    int apart =
        ((columns.process()[row] << 4 | columns.band()[row]) << 4 | columns.regime()[row]) << 12
            | nm(row);
    List<Facet> counted = WorkKey.counted(process(row));
    return new Code(
        apart, number(counted, 0, row), number(counted, 1, row), number(counted, 2, row));
  }

  private int number(List<Facet> counted, int place, int row) {
    return place < counted.size() ? values(counted.get(place)).number(row) : 0;
  }

  private Values values(Facet facet) {
    return values.computeIfAbsent(facet, key -> new Values(columns, key));
  }

  private int add(int row) {
    Map<Facet, WorkKey.Part> parts = new LinkedHashMap<>();
    for (Facet facet : WorkKey.counted(process(row))) {
      Values own = values(facet);
      parts.put(facet, own.parts.get(own.number(row)));
    }
    WavelengthBand band = WavelengthBand.values()[columns.band()[row]];
    keys.add(
        new RangeKey(
            process(row),
            band == WavelengthBand.OTHER ? RangeKey.Light.ofStep(nm(row)) : RangeKey.Light.of(band),
            Regime.values()[columns.regime()[row]],
            new WorkKey(parts)));
    return keys.size() - 1;
  }
}
