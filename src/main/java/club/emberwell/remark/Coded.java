package club.emberwell.remark;

/** One of the known words of something: named by its code in the API, in addresses and files. */
public interface Coded {
  /** Never changes. */
  String code();
}
