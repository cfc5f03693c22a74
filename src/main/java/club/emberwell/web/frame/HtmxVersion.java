package club.emberwell.web.frame;

/**
 * The version in the pom, which is part of the address the jar serves it at; a test compares both.
 */
final class HtmxVersion {
  static final String VERSION = "2.0.10";

  private HtmxVersion() {}
}
