package club.emberwell.remark;

/**
 * How much a remark weighs. An ERROR keeps an entry from being stored; the others travel with it.
 */
public enum Severity {
  INFO,
  WARNING,
  ERROR
}
