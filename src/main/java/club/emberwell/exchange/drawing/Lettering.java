package club.emberwell.exchange.drawing;

import java.awt.Graphics2D;
import java.util.Map;

/** Letters as dots, 5 x 7 each: a server need not have a font. */
final class Lettering {
  private static final int DOT = 3;
  private static final int COLUMNS = 5;

  /** A row of dots a number, the leftmost the highest bit. */
  private static final Map<Character, int[]> ROWS =
      Map.ofEntries(
          Map.entry('d', new int[] {1, 1, 13, 19, 17, 19, 13}),
          Map.entry('r', new int[] {0, 0, 22, 25, 16, 16, 16}),
          Map.entry('a', new int[] {0, 0, 14, 1, 15, 17, 15}),
          Map.entry('w', new int[] {0, 0, 17, 17, 21, 21, 10}),
          Map.entry('n', new int[] {0, 0, 22, 25, 17, 17, 17}),
          Map.entry(',', new int[] {0, 0, 0, 0, 6, 4, 8}),
          Map.entry('i', new int[] {4, 0, 12, 4, 4, 4, 14}),
          Map.entry('v', new int[] {0, 0, 17, 17, 17, 10, 4}),
          Map.entry('e', new int[] {0, 0, 14, 17, 31, 16, 14}),
          Map.entry('t', new int[] {8, 8, 28, 8, 8, 9, 6}),
          Map.entry(' ', new int[] {0, 0, 0, 0, 0, 0, 0}));

  private Lettering() {}

  /** Writes with the colour of the pen, from the upper left corner. */
  static void write(Graphics2D pen, String text, int left, int top) {
    int x = left;
    for (char letter : text.toCharArray()) {
      int[] rows = ROWS.get(letter);
      for (int row = 0; row < rows.length; row++) {
        for (int column = 0; column < COLUMNS; column++) {
          if ((rows[row] >> COLUMNS - 1 - column & 1) == 1) {
            pen.fillRect(x + column * DOT, top + row * DOT, DOT, DOT);
          }
        }
      }
      x += (COLUMNS + 1) * DOT;
    }
  }
}
