package club.emberwell.exchange.drawing;

/**
 * A blank with marks: patchy where the dose was short, with a rim of heat where it was too much.
 */
final class MarkedSurface implements Drawing.Surface {
  private final Look look;
  private final ValueNoise noise;
  private final Figure figure;
  private final float[] positions;
  private final Tone[] marks;

  MarkedSurface(Look look, ValueNoise noise, Sketch sketch) {
    this.look = look;
    this.noise = noise;
    figure = new Figure(sketch, look.blank().shape());
    int trials = sketch.at().size();
    positions = new float[trials];
    marks = new Tone[trials];
    for (int i = 0; i < trials; i++) {
      positions[i] = sketch.at().get(i).floatValue();
      marks[i] = look.mark(positions[i]);
    }
  }

  @Override
  public float blank(float x, float y) {
    return figure.blank(x, y);
  }

  @Override
  public Tone tone(float x, float y) {
    int trial = figure.trial(x, y);
    float position = positions[trial];
    float over = Math.max(0, position - 1);
    float ragged = over == 0 ? 0 : (noise.at(x * 0.12f, y * 0.12f) - 0.5f) * 5 * over;
    float away = figure.mark(x, y) + ragged;
    Tone base = heated(look.blank().base(), away, position);
    if (away >= 1) {
      return base;
    }
    Tone mark = marks[trial];
    float cover = mark.cover() * Math.min(1, Math.max(0, 0.5f - away)) * even(position, x, y);
    float lines = (float) Math.sin(y * 1.25) * 0.025f;
    float light = look.markTexture().light(noise, x + 400, y) + lines - step(x, y, away, position);
    return base.towards(mark.lit(light), cover);
  }

  /** Below the window parts of a fill are missing. */
  private float even(float position, float x, float y) {
    float missing = (-1 - position) * 0.34f;
    if (missing <= 0) {
      return 1;
    }
    float here = noise.at(x * 0.03f, y * 0.03f) * 0.6f + noise.at(x * 0.16f, y * 0.16f) * 0.4f;
    return Math.min(1, Math.max(0.12f, (here - missing) / 0.2f + 0.4f));
  }

  private Tone heated(Tone base, float away, float position) {
    float heat = Math.min(1, Math.max(0, (position - 0.7f) / 1.6f));
    float fading = 1 - Math.max(0, away) / figure.reach();
    if (heat == 0 || fading <= 0) {
      return base;
    }
    float here = (float) Math.exp(-Math.max(0, away) / (5 + 12 * heat)) * fading;
    return base.towards(look.halo(), look.halo().cover() * heat * here);
  }

  /** Light comes from above on the left: there the wall of a step is dark. */
  private float step(float x, float y, float away, float position) {
    float near = 1 - Math.abs(away + 2) / 4;
    if (near <= 0) {
      return 0;
    }
    float deep = Math.min(1, Math.max(0, (position + 2.5f) / 3)) * look.relief();
    return (figure.mark(x - 1, y - 1) - figure.mark(x + 1, y + 1)) * near * deep * 0.16f;
  }
}
