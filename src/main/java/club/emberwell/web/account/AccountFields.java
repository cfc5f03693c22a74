package club.emberwell.web.account;

import club.emberwell.member.door.NewMember;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;

/** The fields that several forms about accounts share. */
final class AccountFields {
  static final int HANDLE_LENGTH = 30;
  static final int PASSWORD_LENGTH = 128;
  private static final int REQUEST_LENGTH = 1000;
  static final int EMAIL_LENGTH = 254;

  private AccountFields() {}

  /** Name, address and password of somebody new. */
  static Form newMember() {
    return new Form().add(handle()).add(newPassword("password")).add(email());
  }

  /** What was typed into them. */
  static NewMember newMember(SentForm sent) {
    return new NewMember(sent.typed("handle"), sent.typed("email"), sent.typed("password"));
  }

  static Field handle() {
    return Field.of("handle", "Name here")
        .hint("3 to 30 letters, digits, - and _. Everybody sees it beside what you post.")
        .autocomplete("username")
        .maxLength(HANDLE_LENGTH)
        .required();
  }

  static Field email() {
    return Field.of("email", "Mail address")
        .hint("If you like: only for a forgotten password and for watches you set. Nobody sees it.")
        .type("email")
        .autocomplete("email")
        .maxLength(EMAIL_LENGTH);
  }

  static Field newPassword(String name) {
    return Field.of(name, "Password")
        .hint("8 characters or more; a few words are better than one odd one.")
        .type("password")
        .autocomplete("new-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }

  /** The present password, as proof. */
  static Field proof() {
    return knownPassword("password", "Your password").hint("So that it is you.");
  }

  /** What somebody says who asks to join. */
  static Field request() {
    return Field.of("request", "Who you are and why you would like to join")
        .hint("Moderators read it; it goes once they have decided.")
        .maxLength(REQUEST_LENGTH)
        .lines()
        .required();
  }

  static Field knownPassword(String name, String label) {
    return Field.of(name, label)
        .type("password")
        .autocomplete("current-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }
}
