package club.emberwell.member.session;

/** More people sign in at once than the server hashes passwords for; they are asked to wait. */
public class HashingBusy extends RuntimeException {
  HashingBusy(Throwable cause) {
    super("Too many people sign in right now.", cause);
  }
}
