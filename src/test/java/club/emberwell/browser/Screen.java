package club.emberwell.browser;

/** Sizes pages are held to. */
enum Screen {
  PHONE(360, 740, true),
  DESK(1280, 800, false);

  final int width;
  final int height;
  final boolean touch;

  Screen(int width, int height, boolean touch) {
    this.width = width;
    this.height = height;
    this.touch = touch;
  }
}
