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
  private final String network;

  /**
   * @param network where it came from, as far as tries are counted
   */
  Credential(Kind kind, String secret, String network) {
    this.kind = kind;
    this.secret = secret;
    this.network = network;
  }

  String network() {
    return network;
  }

  Kind kind() {
    return kind;
  }

  String secret() {
    return secret;
  }
}
