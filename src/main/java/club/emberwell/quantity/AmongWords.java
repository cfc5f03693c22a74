package club.emberwell.quantity;

import club.emberwell.quantity.TextReader.Sure;
import club.emberwell.remark.Reading;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A value among words: {@code 0,08 mm hatch}, {@code 20W 455nm}. One value among words that cannot
 * change it is taken, and the words are named; where they could, or there are several, they are
 * offered. Nothing is found in what may be one value in two parts ({@code 5' 6"}).
 */
record AmongWords(QuantityKind kind, Settling settling, TextReader reader) {
  private static final Pattern START =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}.,'\u066b/+-])(?:[+-] ?(?=[0-9.,\u066b]))?(?=[.,\u066b]?[0-9])");

  /** Two numbers that belong together. */
  private static final Pattern JOINED =
      Pattern.compile("(?iu)[0-9] ?(?:-|~|\\.\\.|:|[x×*] ?|\\bto\\b|\\bbis\\b) ?[0-9]");

  private static final Pattern END = Pattern.compile(" |$|[;:()\\[\\]]|[,.](?= |$)|-(?=\\p{L})");

  /** Words that may change the value beside them. */
  private static final Pattern CHANGING =
      Pattern.compile(
          "(?iu)[^\\p{L}\\p{M} ,;:=.()\\[\\]'\"!?_-]|\\b(?:or|oder|ou|o|или|and|und|et|y|e|и|to|bis"
              + "|max|maximum|min|minimum|up|under|over|below|above|less|more|about|not|no|nicht"
              + "|kein|pas|non|не|each|half|double|twice|times|x|plus|minus|ca|circa)\\b");

  private static final Pattern AROUND = Pattern.compile("^[ ,;:=.()\\[\\]_-]+|[ ,;:=()\\[\\]_-]+$");

  /** More numbers than these are no value with words around it. */
  private static final int MOST_NUMBERS = 5;

  /** A value has at most so many parts: {@code 2 1/2 in per minute}. */
  private static final int MOST_PARTS = 6;

  /** Where a value stands. */
  private record Place(int from, int to, Sure found) {}

  /** Empty where no value stands there, or none that could be taken by itself. */
  Optional<Reading<Quantity>> read(String text) {
    if (JOINED.matcher(text).find()) {
      return Optional.empty();
    }
    List<Place> places = new ArrayList<>();
    Matcher start = START.matcher(text);
    int from = 0;
    for (int numbers = 0; start.find(from); numbers++) {
      if (numbers == MOST_NUMBERS) {
        return Optional.empty();
      }
      Optional<Place> place = at(text, start.start());
      place.ifPresent(places::add);
      from = place.map(Place::to).orElse(start.end() + 1);
      if (from > text.length()) {
        break;
      }
    }
    if (places.isEmpty()) {
      return Optional.empty();
    }
    List<String> words = words(text, places);
    boolean whole = words.stream().allMatch(word -> isWord(word)) && !isOfParts(text, places);
    return whole ? Optional.of(settled(text, places, words)) : Optional.empty();
  }

  /** The longest value from there. */
  private Optional<Place> at(String text, int from) {
    Optional<Place> longest = Optional.empty();
    Matcher end = END.matcher(text);
    int to = from + 1;
    for (int parts = 0; parts < MOST_PARTS && to <= text.length() && end.find(to); parts++) {
      int until = end.start();
      Optional<Sure> found = reader.sure(text.substring(from, until).strip());
      if (found.isPresent()) {
        longest = Optional.of(new Place(from, until, found.get()));
      }
      to = until + 1;
    }
    return longest.filter(place -> !UnitSpelling.goesOn(text.substring(place.to())));
  }

  /** What stands before, between and after them. */
  private static List<String> words(String text, List<Place> places) {
    List<String> words = new ArrayList<>();
    int from = 0;
    for (Place place : places) {
      words.add(text.substring(from, place.from()));
      from = place.to();
    }
    words.add(text.substring(from));
    return words.stream()
        .map(word -> AROUND.matcher(word).replaceAll(""))
        .filter(word -> !word.isEmpty())
        .toList();
  }

  // A number by itself may be a part of the value: 5' 6".
  private static boolean isWord(String words) {
    Matcher start = START.matcher(words);
    int from = 0;
    while (from <= words.length() && start.find(from)) {
      int end = words.indexOf(' ', start.end());
      String number = words.substring(start.start(), end < 0 ? words.length() : end);
      if (number.codePoints().noneMatch(Character::isLetter)
          && !isElsewhere(words, start.start())) {
        return false;
      }
      from = Math.max(start.end() + 1, end);
    }
    return true;
  }

  /** A value of another kind. */
  private static boolean isElsewhere(String words, int from) {
    String text = words.substring(from);
    for (QuantityKind other : QuantityKind.values()) {
      Settling there = new Settling(other, text, Bounds.NONE);
      if (new AmongWords(other, there, new TextReader(other, NumberStyle.ANY, there))
          .at(text, 0)
          .isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** One value in two units, such as 1 min 30 s and 5 ft 6 in, but not 3 mm 1/8 in. */
  private boolean isOfParts(String text, List<Place> places) {
    boolean parted = kind.dimension() == Dimension.LENGTH || kind.dimension() == Dimension.TIME;
    for (int i = 1; i < places.size() && parted; i++) {
      String between = text.substring(places.get(i - 1).to(), places.get(i).from());
      List<String> one = unit(places.get(i - 1));
      List<String> next = unit(places.get(i));
      if (between.isBlank() && !one.equals(next) && isImperial(one) == isImperial(next)) {
        return true;
      }
    }
    return false;
  }

  private List<String> unit(Place place) {
    String unit = place.found().text().replaceFirst("^[^\\p{L}'\"%]+", "");
    return UnitSpelling.read(kind.dimension(), unit).codes();
  }

  private static boolean isImperial(List<String> codes) {
    return codes.stream().allMatch(code -> code.endsWith("_i]"));
  }

  private Reading<Quantity> settled(String text, List<Place> places, List<String> words) {
    List<Sure> values = new ArrayList<>();
    for (Place place : places) {
      if (values.stream().noneMatch(v -> isSame(v, place.found()))) {
        values.add(place.found());
      }
    }
    if (values.size() > 1) {
      return settling.refused(
          RemarkId.NOT_EXACT,
          "More than one value stands here. Which one is it?",
          values.stream().map(Sure::text).toList());
    }
    Sure value = values.get(0);
    String after = text.substring(places.get(places.size() - 1).to());
    boolean signed = "+-".indexOf(value.text().charAt(0)) >= 0 || !kind.mayBeNegative();
    if (signed
        && words.stream().noneMatch(word -> CHANGING.matcher(word).find())
        && !UnitSpelling.startsWithUnit(AROUND.matcher(after).replaceAll(""))) {
      return reader.leaving(value, words);
    }
    return settling.refused(
        RemarkId.NOT_EXACT,
        "One value is needed here. " + TextReader.quoted(words) + " would be left out.",
        signed ? List.of(value.text()) : List.of(value.text(), "-" + value.text()));
  }

  private static boolean isSame(Sure one, Sure other) {
    return one.quantity().value().compareTo(other.quantity().value()) == 0;
  }
}
