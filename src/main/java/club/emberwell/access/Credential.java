package club.emberwell.access;

import io.quarkus.security.identity.request.BaseAuthenticationRequest;

/** What a request brought to prove who sends it. */
final class Credential extends BaseAuthenticationRequest {
  /** Where a secret came from decides what it can be. */
  enum Kind {
    SESSION,
    TOKEN
  }

  private final Kind kind;
  private final String secret;

  Credential(Kind kind, String secret) {
    this.kind = kind;
    this.secret = secret;
  }

  Kind kind() {
    return kind;
  }

  String secret() {
    return secret;
  }
}
