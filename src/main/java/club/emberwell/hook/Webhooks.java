package club.emberwell.hook;

import club.emberwell.bench.FieldReader;
import club.emberwell.hook.HookAddresses.Refused;
import club.emberwell.hook.Webhook.Draft;
import club.emberwell.hook.Webhook.Fresh;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Role;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/** Owners say which addresses are told what happens here. All of it is logged, without secrets. */
@ApplicationScoped
public class Webhooks {
  private static final String ENTITY = "webhook";
  private static final ListOrder DELIVERIES = ListOrder.newestFirst("deliveries", HookLimits.PAGE);

  private final WebhookRepository hooks;
  private final DeliveryRepository deliveries;
  private final HookAddresses addresses;
  private final HookWords words;
  private final HookConfig config;
  private final Proof proof;
  private final Audit audit;

  Webhooks(
      WebhookRepository hooks,
      DeliveryRepository deliveries,
      HookAddresses addresses,
      HookWords words,
      HookConfig config,
      Proof proof,
      Audit audit) {
    this.hooks = hooks;
    this.deliveries = deliveries;
    this.addresses = addresses;
    this.words = words;
    this.config = config;
    this.proof = proof;
    this.audit = audit;
  }

  /** In the order they were added. */
  @Transactional
  public List<Webhook> all(Actor owner) {
    owns(owner);
    return hooks.all();
  }

  @Transactional
  public Webhook get(Actor owner, UUID id) {
    owns(owner);
    return hooks.named(id).orElseThrow(Webhooks::unknown);
  }

  /** How many were switched off by themselves and wait for an owner. */
  @Transactional
  public int broken(Actor owner) {
    return owner.role().atLeast(Role.OWNER) ? hooks.broken() : 0;
  }

  /**
   * Adds a webhook.
   *
   * @throws EntryRefused for what cannot be read, must not be called, or is one too many
   */
  public Fresh add(Actor owner, Draft draft) {
    Wanted wanted = read(owner, draft);
    return QuarkusTransaction.requiringNew().call(() -> store(owner, wanted));
  }

  private Fresh store(Actor owner, Wanted wanted) {
    if (hooks.count() >= HookLimits.HOOKS) {
      String detail = "There are " + HookLimits.HOOKS + " webhooks. Delete one first.";
      throw new EntryRefused(RemarkId.TOO_MANY, "", detail);
    }
    Instant now = Instant.now();
    WebhookEntity hook = new WebhookEntity(UUID.randomUUID(), owner.memberId(), now);
    hook.change(wanted.label(), wanted.url(), wanted.events(), wanted.on(), now);
    hooks.persist(hook);
    hooks.flush();
    log(owner, "add-webhook", hook.id(), wanted.detail());
    return new Fresh(hook.toWebhook(owner.handle()), hook.secret());
  }

  /**
   * Changes a webhook, switches it on or off; what waits for one that is off is not sent.
   *
   * @throws EntryChanged where it was changed since
   */
  public Webhook change(Actor owner, UUID id, int version, Draft draft) {
    get(owner, id);
    Wanted wanted = read(owner, draft);
    return QuarkusTransaction.requiringNew().call(() -> replace(owner, id, version, wanted));
  }

  private Webhook replace(Actor owner, UUID id, int version, Wanted wanted) {
    WebhookEntity hook = locked(id, version);
    hook.change(wanted.label(), wanted.url(), wanted.events(), wanted.on(), Instant.now());
    hooks.flush();
    if (!wanted.on()) {
      deliveries.drop(id);
    }
    log(owner, "change-webhook", id, wanted.detail());
    return hooks.named(id).orElseThrow();
  }

  /** Ends a webhook with everything that waits for it. A second time does nothing. */
  @Transactional
  public void remove(Actor owner, UUID id) {
    owns(owner);
    if (hooks.deleteById(id)) {
      log(owner, "remove-webhook", id, Map.of());
    }
  }

  /** Gives it a new secret; the one before signs as well for a while. */
  public Fresh renewSecret(Actor owner, UUID id, Given given) {
    get(owner, id);
    proof.recent(owner, given);
    return QuarkusTransaction.requiringNew().call(() -> renewSecret(owner, id));
  }

  private Fresh renewSecret(Actor owner, UUID id) {
    WebhookEntity hook = hooks.locked(id).orElseThrow(Webhooks::unknown);
    Instant now = Instant.now();
    hook.renewSecret(now, now.plus(config.oldSecret()));
    hooks.flush();
    log(owner, "renew-webhook-secret", id, Map.of());
    return new Fresh(hooks.named(id).orElseThrow(), hook.secret());
  }

  /**
   * Has a test sent.
   *
   * @throws EntryRefused where it is off
   */
  @Transactional
  public Delivery test(Actor owner, UUID id) {
    if (!get(owner, id).on()) {
      throw new EntryRefused(RemarkId.SWITCHED_OFF, "", "This webhook is off. Switch it on first.");
    }
    deliveries.add(List.of(words.test(id, Instant.now())));
    return deliveries.of(id, Place.first(DELIVERIES, 1)).get(0);
  }

  /** What was sent and what waits, newest first. */
  @Transactional
  public Slice<Delivery> deliveries(Actor owner, UUID id, Part part) {
    get(owner, id);
    return Slice.read(
        part, DELIVERIES, place -> deliveries.of(id, place), one -> List.of(one.number()));
  }

  private WebhookEntity locked(UUID id, int version) {
    WebhookEntity hook = hooks.locked(id).orElseThrow(Webhooks::unknown);
    if (hook.version() != version) {
      throw new EntryChanged(hook.version());
    }
    return hook;
  }

  /** A draft that can be stored. */
  private record Wanted(String label, String url, List<HookEvent> events, boolean on) {
    /** For the log: an address may hold a secret, so its host alone. */
    Map<String, Object> detail() {
      return Map.of(
          "label",
          label,
          "host",
          URI.create(url).getHost(),
          "events",
          events.stream().map(HookEvent::code).toList(),
          "on",
          on);
    }
  }

  private Wanted read(Actor owner, Draft draft) {
    owns(owner);
    FieldReader in = new FieldReader(NumberStyle.ANY);
    in.required("/label", draft.label());
    in.required("/url", draft.url());
    String label = in.text("/label", draft.label(), HookLimits.LABEL, false);
    String url = in.text("/url", draft.url(), HookLimits.URL, false);
    List<HookEvent> events = events(in, draft.events());
    if (url != null) {
      try {
        addresses.target(url);
      } catch (Refused e) {
        in.add(Remark.error(RemarkId.URL_REFUSED, "/url", e.getMessage()));
      }
    }
    Remarks.refuse(in.remarks());
    return new Wanted(label, url, events, !Boolean.FALSE.equals(draft.active()));
  }

  private static List<HookEvent> events(FieldReader in, List<String> codes) {
    List<HookEvent> events = new ArrayList<>();
    for (String code : codes == null ? List.<String>of() : codes) {
      Coded.of(HookEvent.class, String.valueOf(code))
          .filter(HookEvent.CHOICES::contains)
          .ifPresentOrElse(events::add, () -> in.add(unknownEvent()));
    }
    if (codes == null || codes.isEmpty()) {
      in.add(Remark.error(RemarkId.REQUIRED, "/events", "Choose at least one event."));
    }
    return events.stream().distinct().sorted().toList();
  }

  private static Remark unknownEvent() {
    String all = HookEvent.CHOICES.stream().map(HookEvent::code).collect(Collectors.joining(", "));
    return Remark.error(RemarkId.CHOICE_UNKNOWN, "/events", "Choose from: " + all + ".");
  }

  private void log(Actor owner, String action, UUID id, Map<String, Object> detail) {
    audit.record(owner, action, ENTITY, id.toString(), "", detail);
  }

  private static void owns(Actor actor) {
    if (!actor.role().atLeast(Role.OWNER)) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Only owners can do this.");
    }
  }

  private static EntryUnknown unknown() {
    return new EntryUnknown(ENTITY);
  }
}
