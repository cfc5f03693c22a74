package club.emberwell.access.problem;

import club.emberwell.remark.Coded;
import java.util.Locale;

/**
 * Every kind of problem there is. The code ends the {@code type} of the answer (RFC 9457, section
 * 3.1.1), which leads to the page that explains it. A code never changes; programs switch on it.
 */
public enum ProblemKind implements Coded {
  INVALID_JSON(
      400,
      "Cannot be read",
      "The body is not valid JSON, is nested too deep or holds too long a value.",
      "Mend the JSON. Where the place is known, detail names line and column."),
  UNKNOWN_FIELD(
      400,
      "There is no such field",
      "The body has a field that this operation does not know, or has it twice.",
      "Check the spelling of the field in errors, or leave it out. Nothing is skipped in silence."),
  WRONG_TYPE(
      400,
      "Another kind of value is expected",
      "A field holds another kind of JSON value than it takes, such as a number for a text.",
      "Send the kind of value that detail names."),
  INVALID_PARAMETER(
      400,
      "A parameter cannot be read",
      "A parameter of the address is unknown, repeated or has a value that it does not take.",
      "Correct the parameters named in errors."),
  INVALID_REQUEST(
      400,
      "Cannot be read",
      "The request lacks a part or is put together in a way that cannot be read.",
      "Compare the request with the example of the operation."),
  KEY_MISSING(
      400,
      "An Idempotency-Key is missing",
      "A POST that stores something needs the header Idempotency-Key, so that sent twice it is"
          + " stored once.",
      "Make a new key for each thing you post, such as a UUID. Use the same one when you try"
          + " again."),
  KEY_INVALID(
      400,
      "The Idempotency-Key cannot be used",
      "The key is empty, too long or has characters that cannot be seen.",
      "Send a key of visible ASCII characters, such as a UUID."),

  SIGN_IN_NEEDED(
      401,
      "Sign in first",
      "Strangers may not do this, and the request carried no token.",
      "Make a token and send it as Authorization: Bearer."),
  TOKEN_UNKNOWN(
      401,
      "The token is not valid",
      "The token is unknown, was revoked or has expired.",
      "Make a new token. Trying again with this one does not help."),
  NOT_PROVEN(
      401,
      "The password does not fit",
      "Name and password do not fit together, or this needs the password once more.",
      "Ask for the password again and send it with the request."),
  CONFIRMATION_REQUIRED(
      401,
      "Confirm that it is you",
      "This is grave: it needs the password with the request. A token alone is not enough.",
      "Ask for the password and send it as password. Who has none can do this on the website"
          + " only."),

  SCOPE_MISSING(
      403,
      "The token lacks a scope",
      "Its owner may do this, but this token was made for less.",
      "Make a token with the scope that detail and WWW-Authenticate name."),
  ROLE_MISSING(
      403,
      "Your role does not allow this",
      "Only members with a higher role may do this.",
      "Ask a moderator or an owner of the club."),
  NOT_YOURS(
      403,
      "It belongs to somebody else",
      "Only its author, or only its author and moderators, may do this.",
      "Ask its author, or flag it so that a moderator looks at it."),
  YOUR_OWN(
      403,
      "Somebody else has to do this",
      "Nobody decides about what is their own.",
      "Let another moderator or an owner decide."),
  STATE_FORBIDS(
      403,
      "Not possible in its present state",
      "It was withdrawn, removed or decided in the meantime, or something else has to come first.",
      "Read it again. Its state says what is possible."),
  DOOR_CLOSED(
      403,
      "The club does not offer this",
      "The club's settings rule it out: it takes members by invitation, or sends no mail.",
      "Do what detail says, or ask an owner of the club."),
  ACCOUNT_CLOSED(
      403,
      "The account cannot be used",
      "The account waits for approval, was declined or is banned.",
      "Wait for a moderator, or ask one."),
  FOREIGN_FORM(
      403,
      "The form could not be checked",
      "A form of a page was sent from another website or another browser. The API never answers"
          + " this.",
      "Load the page again and send the form once more."),

  NOT_FOUND(
      404,
      "Not found",
      "Nothing is here, or nothing that you may know of.",
      "Check the address and the id. Links that can be used once may be used up."),
  METHOD_NOT_ALLOWED(
      405,
      "Not possible here",
      "The address exists but does not take this method.",
      "Use one of the methods that the header Allow names."),
  FORMAT_NOT_AVAILABLE(
      406,
      "Not in that format",
      "The answer does not come in a format that the header Accept names.",
      "Ask for application/json."),
  TOO_SLOW(
      408,
      "Took too long to arrive",
      "The body came so slowly that it was no longer waited for. Nothing was stored.",
      "Send it again over a better connection, with the same key."),
  KEY_RUNNING(
      409,
      "The same request is still running",
      "A request with this Idempotency-Key has not ended yet.",
      "Wait a second and send it again with the same key."),
  WITHDRAWN(
      410,
      "Withdrawn by its author",
      "It was public once. Its author has withdrawn it.",
      "Delete your copy of it."),
  REMOVED(
      410,
      "Removed by a moderator",
      "It was public once. A moderator has removed it.",
      "Delete your copy of it."),
  LINK_ENDED(
      410,
      "The link does not open anything any more",
      "Whoever made the link has ended it, or removed what it opened.",
      "Delete your copy, and ask for another link."),
  COPY_OUTDATED(
      410,
      "The copy has to be taken anew",
      "The cursor belongs to a history of changes that is over, as after the club's database was"
          + " restored.",
      "Ask for the changes without a cursor, and replace your whole copy by what comes."),
  CHANGED(
      412,
      "Changed in the meantime",
      "It has another version than the one If-Match names.",
      "Read it again, decide again, and send the ETag you read."),
  TOO_LARGE(
      413,
      "Too large",
      "More bytes were sent than this operation takes.",
      "Send less. The limit is in detail."),
  FORMAT_NOT_ACCEPTED(
      415,
      "Not in that format",
      "The body comes in a format that this operation does not take.",
      "Send what the operation names, mostly application/json; pictures as JPEG, PNG or WebP."),

  INVALID_FIELDS(
      422,
      "Please check some entries",
      "The request could be read, but some fields are missing or hold what cannot be stored.",
      "Correct each field in errors: pointer says which, detail says why."),
  AMBIGUOUS_QUANTITY(
      422,
      "A quantity could mean two things",
      "A text such as 1,000 mm/min can be read in two ways, and is never guessed.",
      "Send one of the readings in errors, or {value, unit} with a UCUM code."),
  UNCONFIRMED(
      422,
      "Please check some entries",
      "Values look unlikely, and the request did not say that they are meant.",
      "Check them. Where they are meant, send the request again with their pointers in confirmed."),
  PROHIBITED_WORK(
      422,
      "Not with a laser",
      "The material gives off what harms people or machines, so no settings are taken for it.",
      "Use another material. prohibited says what it gives off and who says so."),
  KEY_REUSED(
      422,
      "The Idempotency-Key was used before",
      "The same key came with another request.",
      "Make a new key for each thing you post."),
  PICTURE_UNREADABLE(
      422,
      "The picture cannot be used",
      "The file is damaged, has more pixels than are taken, or takes too long to read.",
      "Save it again as JPEG or PNG, or make it smaller."),
  CONDITION_MISSING(
      428,
      "A condition is missing",
      "A change needs the version it is meant for, so that nobody's work is overwritten.",
      "Read it first and send its ETag as If-Match."),

  TOO_MANY_TRIES(
      429,
      "Too many tries",
      "Too many attempts for this account or from this address.",
      "Wait as many seconds as Retry-After says."),
  TOO_FAST(
      429,
      "Too many tries",
      "More was written in a short time than is taken.",
      "Wait as many seconds as Retry-After says, then send it again with the same key."),
  BUSY(
      429,
      "Too many tries",
      "Many people are signing in at this moment.",
      "Wait as many seconds as Retry-After says."),
  CROWDED(
      429,
      "Too much at once",
      "This address has as many requests open as are taken from one.",
      "Wait until some are answered, and at least as many seconds as Retry-After says."),
  OWN_FAULT(
      500,
      "Our own error",
      "Something went wrong in the server.",
      "Give the id of the answer to the operator, who finds it in the log."),
  UNAVAILABLE(
      503,
      "Not available right now",
      "The database does not answer. Nothing was stored.",
      "Wait as many seconds as Retry-After says, then send it again with the same key."),
  PICTURES_BUSY(
      503,
      "Not available right now",
      "More pictures are being made ready than this server does at once.",
      "Wait as many seconds as Retry-After says, then send it again with the same key. Send one"
          + " picture after the other."),
  INDEX_NOT_READY(
      503,
      "Not available right now",
      "The search index is being opened or built.",
      "Wait as many seconds as Retry-After says."),
  STORAGE_FULL(
      507,
      "No room left",
      "The server's disk is full. Nothing was stored.",
      "Tell the operator. What you sent can be sent again with the same key when there is room.");

  /** Where every kind is explained; one page below it for each. */
  public static final String PATH = "/problems";

  private final String code = name().toLowerCase(Locale.ROOT).replace('_', '-');
  private final int status;
  private final String title;
  private final String meaning;
  private final String remedy;

  ProblemKind(int status, String title, String meaning, String remedy) {
    this.status = status;
    this.title = title;
    this.meaning = meaning;
    this.remedy = remedy;
  }

  @Override
  public String code() {
    return code;
  }

  /** The HTTP status it comes with. */
  public int status() {
    return status;
  }

  /** A few words, the same each time. */
  public String title() {
    return title;
  }

  /** What happened, in a sentence or two. */
  public String meaning() {
    return meaning;
  }

  /** What to do about it. */
  public String remedy() {
    return remedy;
  }

  /** A path of this server, e.g. {@code /problems/changed}. */
  public String type() {
    return PATH + "/" + code;
  }
}
