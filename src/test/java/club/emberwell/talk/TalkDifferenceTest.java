package club.emberwell.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.Difference;
import club.emberwell.entry.Difference.Change;
import club.emberwell.entry.Difference.Line;
import club.emberwell.entry.FieldChange;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TalkDifferenceTest {
  private static WrittenTalk talk(String title, String text) {
    return new WrittenTalk(title, text, Ties.NONE);
  }

  @Test
  void equalTextsDifferInNothing() {
    assertTrue(TalkDifference.between(talk("same", "a\nb"), talk("same", "a\nb")).isEmpty());
  }

  @Test
  void aChangedLineIsOneGoneAndOneNewBetweenTheKeptOnes() {
    Difference found =
        TalkDifference.between(talk("a title", "a\nb\nc"), talk("another", "a\nB\nc"));
    assertEquals(List.of(new FieldChange("/title", "a title", "another")), found.fields());
    assertEquals(
        List.of(
            new Line(Change.KEPT, "a"),
            new Line(Change.GONE, "b"),
            new Line(Change.NEW, "B"),
            new Line(Change.KEPT, "c")),
        found.lines());
  }

  @Test
  void aTieThatCameOrWentIsNamed() {
    Ties ties = new Ties("slate", null, null, null, null, null, null);
    Difference found = TalkDifference.between(talk("t", "x"), new WrittenTalk("t", "x", ties));
    assertEquals(List.of(new FieldChange("/ties/material", null, "slate")), found.fields());
  }

  @Test
  void bothTextsCanBeReadOutOfAnyDifference() {
    Random random = new Random(7);
    for (int round = 0; round < 500; round++) {
      List<String> before = lines(random, random.nextInt(30));
      List<String> after = lines(random, random.nextInt(30));
      List<Line> lines = changed(before, after);
      assertEquals(before, texts(lines, Change.NEW));
      assertEquals(after, texts(lines, Change.GONE));
    }
  }

  @Test
  void textsTooLongToCompareAreShownWhole() {
    List<String> before = IntStream.range(0, 5000).mapToObj(i -> "a" + i).toList();
    List<String> after = IntStream.range(0, 5000).mapToObj(i -> "b" + i).toList();
    assertEquals(10_000, changed(before, after).size());
  }

  private static List<Line> changed(List<String> before, List<String> after) {
    return TalkDifference.between(
            talk("t", String.join("\n", before)), talk("t", String.join("\n", after)))
        .lines();
  }

  private static List<String> lines(Random random, int count) {
    return IntStream.range(0, count).mapToObj(i -> "" + (char) ('a' + random.nextInt(4))).toList();
  }

  private static List<String> texts(List<Line> lines, Change without) {
    return lines.stream().filter(line -> line.change() != without).map(Line::text).toList();
  }
}
