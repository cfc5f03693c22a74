package club.emberwell.card;

import club.emberwell.member.Actor;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Secrets;
import club.emberwell.member.pace.Throttle;
import club.emberwell.recipe.Recipes;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * Links by which whoever has one reads the job card of one recipe, and nothing else of its owner. A
 * link follows the newest revision; one that was printed before names its own, and opens those
 * since the link was made.
 */
@ApplicationScoped
public class CardLinks {
  private static final String TRIED = "card-link-address";

  private final CardLinkRepository rows;
  private final Recipes recipes;
  private final Members members;
  private final Throttle throttle;
  private final CardLimits limits;

  CardLinks(
      CardLinkRepository rows,
      Recipes recipes,
      Members members,
      Throttle throttle,
      CardLimits limits) {
    this.rows = rows;
    this.recipes = recipes;
    this.members = members;
    this.throttle = throttle;
    this.limits = limits;
  }

  /**
   * A link as its owner sees it.
   *
   * @param version the recipe's newest when it was made
   * @param openedAt last, by whomever; null = never
   * @param endedAt null = it works
   */
  public record Link(UUID id, int version, Instant createdAt, Instant openedAt, Instant endedAt) {
    public boolean works() {
      return endedAt == null;
    }
  }

  /**
   * A fresh link.
   *
   * @param path on this server; the only time it is seen
   */
  public record Fresh(Link link, String path) {}

  /**
   * What a link opens.
   *
   * @param owner as somebody who asks
   * @param since the oldest revision it shows
   */
  public record Opened(Actor owner, UUID recipe, int since) {}

  /** Where the card of a secret is read. */
  public static String path(String secret) {
    return "/cards/" + secret;
  }

  /**
   * Makes a link to the card of one of the actor's recipes.
   *
   * @throws EntryRefused where it has as many as fit
   */
  @Transactional
  public Fresh make(Actor actor, UUID recipe) {
    int newest = recipes.get(actor, recipe).version();
    if (rows.working(recipe) >= CardLimits.OPEN) {
      String detail = "This recipe has as many links as fit: %d. End one first.";
      throw new EntryRefused(RemarkId.LINKS_MANY, "", detail.formatted(CardLimits.OPEN));
    }
    String secret = Secrets.random();
    CardLinkEntity link = new CardLinkEntity(recipe, newest, Secrets.sha256(secret));
    rows.persist(link);
    return new Fresh(link.toLink(), path(secret));
  }

  /** The links of one of the actor's recipes, the newest first. */
  @Transactional
  public List<Link> of(Actor actor, UUID recipe) {
    recipes.get(actor, recipe);
    return rows.of(recipe, CardLimits.LISTED).stream().map(CardLinkEntity::toLink).toList();
  }

  /** Ends a link for good. A second time does nothing. */
  @Transactional
  public void end(Actor actor, UUID recipe, UUID id) {
    recipes.get(actor, recipe);
    rows.one(recipe, id).orElseThrow(() -> new EntryUnknown("link")).end();
  }

  /**
   * Opens the card of a secret. Throttled, so that secrets cannot be tried out.
   *
   * @throws EntryUnknown where there never was such a link, or its recipe is gone with its owner
   * @throws LinkEnded where it opened a card once
   */
  public Opened open(String secret, String addressPrefix) {
    throttle.claim(TRIED, addressPrefix, limits.tried());
    Opened opened = QuarkusTransaction.requiringNew().call(() -> found(secret));
    throttle.giveBack(TRIED, addressPrefix);
    return opened;
  }

  private Opened found(String secret) {
    CardLinkRepository.Found found =
        rows.bySecret(Secrets.sha256(secret)).orElseThrow(() -> new EntryUnknown("card"));
    MemberView owner =
        members
            .byId(found.owner())
            .filter(member -> found.works() && member.status() == MemberStatus.ACTIVE)
            .orElseThrow(LinkEnded::new);
    found.link().opened();
    return new Opened(owner.actor(), found.link().recipe(), found.link().toLink().version());
  }
}
