package club.emberwell.exchange.drawing;

/** How a surface differs from its colour from place to place. */
enum Texture {
  /** Wood: long fibres and broad rings. */
  GRAIN {
    @Override
    float light(ValueNoise noise, float x, float y) {
      float ring = noise.at(x * 0.004f, y * 0.035f) - 0.5f;
      float fibre = noise.at(x * 0.02f, y * 0.45f) - 0.5f;
      return ring * 0.28f + fibre * 0.14f;
    }
  },
  /** Strips glued side by side. */
  STRIPS {
    @Override
    float light(ValueNoise noise, float x, float y) {
      float strip = noise.at(3, (float) Math.floor(y / 46) * 7) - 0.5f;
      return strip * 0.2f + GRAIN.light(noise, x, y) * 0.5f;
    }
  },
  CRUMBS {
    @Override
    float light(ValueNoise noise, float x, float y) {
      float crumb = noise.at(x * 0.11f, y * 0.11f);
      float fine = noise.at(x * 0.35f, y * 0.35f) - 0.5f;
      return (crumb > 0.72f ? -0.22f : crumb < 0.2f ? 0.14f : 0) + fine * 0.16f;
    }
  },
  PEBBLES {
    @Override
    float light(ValueNoise noise, float x, float y) {
      float crease = Math.abs(noise.at(x * 0.09f, y * 0.09f) - 0.5f);
      return Math.min(0.12f, crease * 0.7f) - 0.06f;
    }
  },
  /** Split stone. */
  LAYERS {
    @Override
    float light(ValueNoise noise, float x, float y) {
      float step = noise.at(x * 0.008f, y * 0.02f);
      float fine = noise.at(x * 0.2f, y * 0.2f) - 0.5f;
      return (float) Math.floor(step * 5) * 0.05f - 0.1f + fine * 0.12f;
    }
  },
  BRUSHED {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return (noise.at(x * 0.006f, y * 0.9f) - 0.5f) * 0.13f + sheen(x, y) * 0.1f;
    }
  },
  /** The orange peel of a powder coat. */
  PEEL {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return (noise.at(x * 0.13f, y * 0.13f) - 0.5f) * 0.07f + sheen(x, y) * 0.12f;
    }
  },
  GLOSS {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return sheen(x, y) * 0.16f + (noise.at(x * 0.02f, y * 0.02f) - 0.5f) * 0.04f;
    }
  },
  FROST {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return (noise.at(x * 0.55f, y * 0.55f) - 0.5f) * 0.16f;
    }
  },
  WEAVE {
    @Override
    float light(ValueNoise noise, float x, float y) {
      double thread = Math.sin((x + y) * 0.9) * 0.05 + Math.sin((x - y) * 0.35) * 0.03;
      return (float) thread + (noise.at(x * 0.3f, y * 0.3f) - 0.5f) * 0.14f;
    }
  },
  /** The flutes below the liner of a board. */
  WAVES {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return (float) Math.sin(x * 0.17) * 0.035f + (noise.at(x * 0.2f, y * 0.05f) - 0.5f) * 0.1f;
    }
  },
  FINE {
    @Override
    float light(ValueNoise noise, float x, float y) {
      return (noise.at(x * 0.4f, y * 0.4f) - 0.5f) * 0.1f;
    }
  };

  /**
   * How much lighter, -1 to 1.
   *
   * @param x pixels along the grain, y across it
   */
  abstract float light(ValueNoise noise, float x, float y);

  private static float sheen(float x, float y) {
    return (float) Math.sin((x * 0.8 + y) * 0.006);
  }
}
