package club.emberwell.exchange.drawing;

/** A sheet with a hole cut into it, and below the edge of a cut, enlarged. */
final class CutSurface implements Drawing.Surface {
  private static final float SHEET_Y = -62;
  private static final float EDGE_Y = 158;
  private static final float EDGE_HALF = 56;
  private static final float HOLE_X = -120;
  private static final float HOLE = 84;

  private final Look look;
  private final ValueNoise noise;
  private final float position;
  private final Tone mark;

  CutSurface(Look look, ValueNoise noise, float position) {
    this.look = look;
    this.noise = noise;
    this.position = position;
    mark = look.mark(position);
  }

  @Override
  public float blank(float x, float y) {
    float sheet = Figure.box(x, y - SHEET_Y, 290, 146, 5);
    float edge = Figure.box(x, y - EDGE_Y, 290, EDGE_HALF, 3);
    float fallen = position >= -1 ? HOLE - fromHole(x, y) : Float.NEGATIVE_INFINITY;
    return Math.min(Math.max(sheet, fallen), edge);
  }

  private static float fromHole(float x, float y) {
    return Figure.length(x - HOLE_X, y - SHEET_Y);
  }

  @Override
  public Tone tone(float x, float y) {
    return y > (SHEET_Y + 146 + EDGE_Y - EDGE_HALF) / 2 ? edge(x, y) : sheet(x, y);
  }

  /** From above: a kerf, wider and browner the more dose it got. */
  private Tone sheet(float x, float y) {
    float over = Math.max(0, position);
    float rough = (noise.at(x * 0.1f, y * 0.1f) - 0.5f) * 3 * over;
    float kerf = 3 + 2 * over;
    float away = Math.abs(fromHole(x, y) - HOLE) - kerf;
    float slot = Figure.box(x - 120, y - SHEET_Y, 90, 0.6f * kerf, 0);
    float near = Math.min(away, slot) + rough;
    float heat = Math.min(1, Math.max(0.15f, (position + 0.8f) / 2.6f));
    float brown = (float) Math.exp(-Math.max(0, near) / (4 + 14 * heat));
    Tone base = look.blank().base().towards(look.halo(), look.halo().cover() * heat * brown);
    return near >= 0.5f ? base : base.towards(mark.lit(-0.5f), Math.min(1, 0.5f - near));
  }

  /** From the side: plies and the streaks of the beam; what was not reached is raw and torn. */
  private Tone edge(float x, float y) {
    float down = (y - EDGE_Y + EDGE_HALF) / (2 * EDGE_HALF);
    float torn = (noise.at(x * 0.07f, 5) - 0.5f) * 0.12f;
    float reached = position < -1 ? 1 + (position + 1) * 0.3f + torn : 1;
    float streaks = (noise.at(x * 0.2f, y * 0.012f) - 0.5f) * 0.2f;
    int ply = (int) (Math.max(0, Math.min(0.999f, down)) * look.blank().layers());
    float layered = ply % 2 == 1 ? -0.14f : 0;
    if (down > reached) {
      float fibres = (noise.at(x * 0.5f, y * 0.1f) - 0.5f) * 0.3f;
      return look.blank().base().lit(fibres + layered - 0.05f);
    }
    float hotter = position > 1 ? (1 - down) * 0.12f * (position - 1) : 0;
    return mark.lit(streaks + layered * 0.7f + 0.05f - hotter);
  }
}
