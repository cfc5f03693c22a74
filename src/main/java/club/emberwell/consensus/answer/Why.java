package club.emberwell.consensus.answer;

import club.emberwell.remark.Coded;

/** Why a start is only a rough one. */
public enum Why implements Coded {
  MY_SPOT("my-spot", "Your machine's spot size is missing."),
  THEIR_SPOT("their-spot", "The spot size of the machine these settings come from is missing."),
  UNLIKE_MACHINE(
      "unlike-machine", "Speed or power is more than twice or less than half of what was tried."),
  UNLIKE_MOST("unlike-most", "Most members have machines unlike yours: one like it was followed."),
  ONE_MEMBER("one-member", "Only one member has tried this."),
  FEW_MEMBERS("few-members", "Fewer than six members have tried this."),
  TWO_GROUPS("two-groups", "Members fall into two groups of settings: look at both."),
  BORROWED("borrowed", "It is borrowed from work like it.");

  private final String code;
  private final String sentence;

  Why(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  public String sentence() {
    return sentence;
  }
}
