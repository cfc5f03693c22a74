package club.emberwell.web.share;

import club.emberwell.web.plot.DosePlot;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;

/** Draws a card as PNG in the size that link previews take. */
final class CardPainter {
  static final int WIDTH = 1200;
  static final int HEIGHT = 630;

  // the light colours of base.css: a picture cannot follow the reader's choice
  private static final Color PAPER = new Color(0xfaf6ef);
  private static final Color INK = new Color(0x2a2522);
  private static final Color SOFT = new Color(0x6b6059);
  private static final Color EMBER = new Color(0xb3441e);
  private static final Color BAND = new Color(0xf0d9c4);
  private static final Color FAILED = new Color(0x8a7d73);

  private static final int EDGE = 64;
  private static final int LABELS = 150;
  private static final int FOOT = 40;
  private static final int STRIPE = 12;
  private static final int RADIUS = 9;
  private static final double STEP = 14;
  private static final double TICK = 8;
  private static final double LEVELS = 6;

  private final Graphics2D pen;
  private float y = EDGE;

  private CardPainter(Graphics2D pen) {
    this.pen = pen;
  }

  static byte[] png(Card card) {
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    try {
      pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      pen.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      new CardPainter(pen).paint(card);
    } finally {
      pen.dispose();
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private void paint(Card card) {
    pen.setColor(PAPER);
    pen.fillRect(0, 0, WIDTH, HEIGHT);
    pen.setColor(EMBER);
    pen.fillRect(0, 0, STRIPE, HEIGHT);
    boolean plain = card.plot() == null;
    write(card.title(), font(Font.BOLD, plain ? 52 : 42), INK, 2);
    write(card.lead(), font(Font.BOLD, plain ? 42 : 36), EMBER, plain ? 3 : 1);
    for (String line : card.lines()) {
      write(line, font(Font.PLAIN, plain ? 32 : 26), SOFT, plain ? 2 : 1);
    }
    if (!plain) {
      plot(card.plot());
    }
    pen.setFont(font(Font.PLAIN, 24));
    pen.setColor(SOFT);
    pen.drawString(card.club(), EDGE, HEIGHT - FOOT + 12);
  }

  private static Font font(int style, int size) {
    return new Font(Font.SANS_SERIF, style, size);
  }

  /** Writes a text in at most so many lines and goes below it. */
  private void write(String text, Font font, Color colour, int most) {
    pen.setFont(font);
    pen.setColor(colour);
    float height = pen.getFontMetrics().getHeight() * 1.05f;
    for (String line : lines(text, most)) {
      y += height * 0.8f;
      pen.drawString(line, EDGE, y);
      y += height * 0.2f;
    }
    y += height * 0.15f;
  }

  private List<String> lines(String text, int most) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      boolean fits = width(line + " " + word) <= WIDTH - 2 * EDGE;
      if (!fits && line.length() > 0 && lines.size() < most - 1) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(fitting(line.toString()));
    return lines;
  }

  /** Cut at the right edge. */
  private String fitting(String line) {
    String some = line;
    while (width(some) > WIDTH - 2 * EDGE && some.length() > 2) {
      some = some.substring(0, some.offsetByCodePoints(some.length(), -2)) + "…";
    }
    return some;
  }

  private int width(String text) {
    return pen.getFontMetrics().stringWidth(text);
  }

  private void plot(DosePlot plot) {
    double left = EDGE + LABELS;
    double across = (WIDTH - EDGE - left) / 100;
    double axis = HEIGHT - FOOT - 70;
    double top = y + 40;
    if (plot.band() != null) {
      pen.setColor(BAND);
      pen.fill(
          new Rectangle2D.Double(
              left + plot.band().from() * across, top, plot.band().core() * across, axis - top));
    }
    double lane = (axis - top) / plot.lanes().size();
    for (int i = 0; i < plot.lanes().size(); i++) {
      lane(plot.lanes().get(i), left, across, top + lane * (i + 1) - RADIUS - 4);
    }
    if (plot.start() != null) {
      start(plot.start(), left, across, top, axis);
    }
    axis(plot, left, across, axis);
  }

  private void lane(DosePlot.Lane lane, double left, double across, double base) {
    pen.setFont(font(Font.PLAIN, 22));
    pen.setColor(SOFT);
    pen.drawString(lane.label(), EDGE, (float) base + 8);
    for (DosePlot.Dot dot : lane.dots()) {
      double x = left + dot.x() * across;
      double at = base - dot.wide() % LEVELS * STEP;
      pen.setColor(dot.kind().equals("right") ? EMBER : FAILED);
      pen.setStroke(new BasicStroke(2));
      if (dot.aside()) {
        pen.draw(shape(dot.kind(), x, at));
      } else {
        pen.fill(shape(dot.kind(), x, at));
      }
    }
  }

  private static Shape shape(String kind, double x, double y) {
    if (kind.equals("right")) {
      return new Ellipse2D.Double(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
    }
    double up = kind.equals("much") ? -RADIUS : RADIUS;
    Path2D triangle = new Path2D.Double();
    triangle.moveTo(x - RADIUS, y - up);
    triangle.lineTo(x + RADIUS, y - up);
    triangle.lineTo(x, y + up);
    triangle.closePath();
    return triangle;
  }

  private void start(DosePlot.Mark start, double left, double across, double top, double axis) {
    double x = left + start.x() * across;
    pen.setColor(INK);
    pen.setStroke(new BasicStroke(3));
    pen.draw(new Line2D.Double(x, top, x, axis));
    pen.setFont(font(Font.BOLD, 24));
    centred(start.label(), x, top - 10);
  }

  private void axis(DosePlot plot, double left, double across, double axis) {
    pen.setColor(SOFT);
    pen.setStroke(new BasicStroke(2));
    pen.draw(new Line2D.Double(left, axis, WIDTH - EDGE, axis));
    pen.setFont(font(Font.PLAIN, 22));
    plot.ticks()
        .forEach(
            tick -> {
              double x = left + tick.x() * across;
              pen.draw(new Line2D.Double(x, axis, x, axis + TICK));
              centred(tick.label(), x, axis + 32);
            });
    pen.drawString(plot.axisName(), WIDTH - EDGE - width(plot.axisName()), (float) axis + 62);
  }

  private void centred(String text, double x, double base) {
    double at = Math.min(x - width(text) / 2.0, WIDTH - EDGE - width(text));
    pen.drawString(text, (float) Math.max(EDGE, at), (float) base);
  }
}
