package club.emberwell.browser;

import java.util.Map;
import java.util.function.Consumer;

/** Every page in every state worth a look, with who sees it and how they get there. */
enum PageState {
  FIND("/"),
  FIND_WITH_ANSWER("/?q=navy+powder+coat&source=diode"),
  FIND_SEVERAL_WORKS("/?q=powder+coat&source=diode"),
  FIND_WITH_CAUTION("/?material=stainless-steel&coating=powder-coat"),
  FIND_PROHIBITED("/?q=pvc"),
  FIND_NOTHING("/?q=zzqqxxyy&source=uv"),
  FIND_MISREAD("/?q=slate&powerMin=lots"),
  RANGE("/range?q=navy+powder+coat&source=diode"),
  PERSON("/members/" + BrowserTest.MEMBER),
  RANGE_OF_NOTHING("/range?q=zzqqxxyy"),
  COMPARE_EMPTY("/compare"),
  COMPARE(v -> v.open("/range?q=powder+coat&source=diode").press("main a[href*='/compare']")),
  REPORT(v -> v.open("/?q=powder+coat").press(".hit th a[href^='/reports/']")),
  PHOTOS(BrowserTest.MEMBER, v -> PageWays.own(v).press("main a[href$='/photos']")),
  GRID_REPORT("/reports/" + PageWays.GRID),
  REPORT_HISTORY("/reports/" + PageWays.GRID + "/history"),
  SIGN_IN("/sign-in"),
  SIGN_IN_REFUSED(
      v -> v.open("/sign-in").fill(Map.of("handle", "nobody-here", "password", "not it")).send()),
  SIGN_UP("/sign-up"),
  SIGN_UP_REFUSED(
      v -> v.open("/sign-up").fill(Map.of("handle", "a b", "password", "password")).send()),
  PASSWORD_FORGOTTEN(v -> v.open("/sign-in").press("main a[href*='reset']")),
  UNSUBSCRIBE(v -> v.open(PageWays.unsubscribing())),
  UNSUBSCRIBED(v -> v.open(PageWays.unsubscribing()).send()),
  UNSUBSCRIBE_NOTHING("/unsubscribe/no-such-link"),
  ABOUT("/about"),
  HOW_TO_READ_A_RANGE("/help/range"),
  DATA("/data"),
  FOR_PROGRAMS("/help/api"),
  FOR_PROGRAMS_MACHINES("/help/api/machines"),
  NOT_FOUND("/nowhere"),
  NO_SUCH_REPORT("/reports/00000000-0000-7000-8000-000000000000"),
  MATERIALS("/materials"),
  MATERIALS_SEARCHED("/materials?q=ply"),
  MATERIALS_PROHIBITED("/materials?q=pvc"),
  MATERIAL_PROHIBITED("/materials/pvc"),
  MATERIAL("/materials/stainless-steel"),
  COATING("/materials/coating/powder-coat"),
  HAZARD_CARD("/materials/pom/hazards"),
  HAZARD_CARD_PROHIBITED("/materials/unknown-plastic/hazards"),
  MATERIAL_UNKNOWN("/materials?q=zorblax"),
  DOSE("/dose"),
  DOSE_ANSWERED(
      "/dose?laser.source=diode&laser.wavelength=455+nm&laser.ratedPower=10+W"
          + "&laser.motion=gantry&laser.beamDiameter=0.08+mm&process=surface-engraving"
          + "&settings.power=80+%25&settings.speed=3000+mm/min&settings.lineSpacing=0.1+mm"),
  DOSE_REFUSED("/dose?laser.source=diode&laser.wavelength=5+kg&settings.speed=1,000+mm/min"),
  EYES("/dose/eyes"),
  EYES_ANSWERED("/dose/eyes?wavelength=455+nm&power=10+W&beam=5+mm&divergence=1+mrad"),
  AIR("/dose/air"),
  ME(BrowserTest.MEMBER, "/me"),
  ME_REFUSED(
      BrowserTest.MEMBER,
      v ->
          v.open("/me")
              .fill(Map.of("current_", "not it", "password", "short"))
              .press("form[action='/me/password'] button")),
  BENCH(BrowserTest.MEMBER, "/bench"),
  BENCH_EMPTY(BrowserTest.READER, "/bench"),
  BENCH_COPY(BrowserTest.MEMBER, "/bench/copy"),
  BENCH_COPY_REFUSED(
      BrowserTest.MEMBER, v -> v.open("/bench/copy").press("form[enctype] button.secondary")),
  BENCH_COPY_LOOKED_AT(BrowserTest.MEMBER, PageWays::copy),
  BENCH_COPY_RESTORED(
      BrowserTest.MEMBER,
      v -> PageWays.copy(v).press("form[action='/bench/copy/restore'] button.primary")),
  MACHINE_NEW(BrowserTest.MEMBER, "/bench/machines/new"),
  MACHINE_REFUSED(
      BrowserTest.MEMBER,
      v -> v.open("/bench/machines/new").fill(Map.of("ratedPower", "1,000 W")).send()),
  MACHINE(
      BrowserTest.MEMBER,
      v -> v.open("/bench").press("main .cards a.button[href*='/bench/machines/']")),
  MACHINE_DELETE(BrowserTest.MEMBER, v -> v.open("/bench").press("main .cards a[href$='/delete']")),
  GRID_PLAN(
      BrowserTest.MEMBER,
      v -> v.open("/?q=navy+powder+coat&source=diode").press(".answer a[href^='/grids/plan']")),
  GRID_PLAN_REFUSED(BrowserTest.MEMBER, "/grids/plan?material=slate&blank.cell=0.1+mm"),
  GRID_SHEET(
      BrowserTest.MEMBER,
      v ->
          v.open("/?q=navy+powder+coat&source=diode")
              .press(".answer a[href^='/grids/plan']")
              .press(".plan form button")),
  TEST_GRID(BrowserTest.MEMBER, PageWays::grid),
  TEST_GRID_JUDGED(
      BrowserTest.MEMBER,
      v ->
          PageWays.grid(v)
              .press("main a[href$='/results']")
              .press("button.cell")
              .press("#mark-best")
              .press("button.cell")),
  TEST_GRID_SEEN(BrowserTest.MEMBER, PageWays::seen),
  SAMPLES(BrowserTest.MEMBER, "/samples"),
  SAMPLE_KEPT(
      BrowserTest.MEMBER,
      v -> v.open("/samples/new").fill(Map.of("what", "Slate coaster", "box", "Box 2")).send()),
  SAMPLE_LABELS(BrowserTest.MEMBER, "/samples/labels"),
  LOT_REFUSED(BrowserTest.MEMBER, v -> v.open("/lots/new").fill(Map.of("received", "-4")).send()),
  EYEWEAR_NONE(BrowserTest.READER, "/eyewear"),
  EYEWEAR_REFUSED(
      BrowserTest.MEMBER, v -> v.open("/eyewear/new").fill(Map.of("marking", "OD six")).send()),
  EYEWEAR(BrowserTest.MEMBER, v -> PageWays.glasses(v, "Green pair")),
  EYES_OF_MACHINE(BrowserTest.MEMBER, v -> PageWays.glasses(v, "Blue pair").press("main .fit a")),
  ROOM_REFUSED(BrowserTest.MEMBER, v -> v.open("/rooms/new").fill(Map.of("flow", "400")).send()),
  ROOM(
      BrowserTest.MEMBER,
      v ->
          v.open("/rooms/new")
              .fill(Map.of("name", "Shed", "flow", "400 m3/h", "duct", "4 in", "volume", "60 m3"))
              .send()),
  LOT_IN_TIME(
      BrowserTest.MEMBER,
      v -> {
        PageWays.lot(v, "2026-03-04", "44");
        PageWays.lot(v, "2026-06-20", "48").press("main li a[href^='/lots/']");
      }),
  SUPPLIERS(BrowserTest.MEMBER, "/suppliers"),
  SUPPLIERS_SEARCHED(BrowserTest.MEMBER, "/suppliers?q=north"),
  FIXTURES(BrowserTest.MEMBER, "/fixtures"),
  FIXTURE_REFUSED(
      BrowserTest.MEMBER,
      v -> v.open("/fixtures/new").fill(Map.of("rows", "0", "columns", "3")).send()),
  FIXTURE_BATCH(
      BrowserTest.MEMBER,
      v ->
          v.open("/fixtures/new")
              .fill(
                  Map.of(
                      "name",
                      "Coaster jig",
                      "columns",
                      "4",
                      "rows",
                      "3",
                      "pitchX",
                      "95 mm",
                      "pitchY",
                      "95 mm",
                      "offsetX",
                      "52 mm",
                      "offsetY",
                      "52 mm",
                      "pieces",
                      "10"))
              .send()
              .fill(Map.of("pieces", "64", "burn", "90 s", "handling", "10 s", "change", "1 min"))
              .press("main form[method=get] button.primary")),
  ORDER_ANSWERED(
      BrowserTest.MEMBER,
      "/lots/order?lines.0.name=navy&lines.0.pieces=24&lines.1.name=black&lines.1.pieces=12"
          + "&tests=1&chance=90&usable=46&received=50"),
  RECIPES_NONE(BrowserTest.READER, "/recipes"),
  RECIPE_NEW(BrowserTest.MEMBER, "/recipes/new?report=" + PageWays.GRID + "&trial=1"),
  RECIPE_REFUSED(
      BrowserTest.MEMBER,
      v -> v.open("/recipes/new").fill(Map.of("settings.speed", "1,000 mm/min")).send()),
  RECIPE(BrowserTest.MEMBER, PageWays::recipe),
  RECIPES(BrowserTest.MEMBER, v -> PageWays.recipe(v).press(".crumbs a")),
  RECIPE_EDIT(BrowserTest.MEMBER, v -> PageWays.recipe(v).press("main a[href$='/edit']")),
  RECIPE_REVISIONS(BrowserTest.MEMBER, PageWays::revised),
  RECIPE_REVISION(BrowserTest.MEMBER, v -> PageWays.revised(v).press("main li:last-child h2 a")),
  JOB_CARD(BrowserTest.MEMBER, v -> PageWays.recipe(v).press("main a[href$='/card']")),
  JOB_CARD_PRINTED(
      BrowserTest.MEMBER,
      v -> {
        PageWays.revised(v).press("main h1 ~ p a").press("main a[href$='/card']");
        v.open(v.where() + "?revision=1");
      }),
  JOB_CARD_LINK(BrowserTest.MEMBER, v -> PageWays.cardLink(v)),
  JOB_CARD_LINKS(BrowserTest.MEMBER, v -> PageWays.cardLink(v).press("main a[href$='/links']")),
  JOB_CARD_OPENED(BrowserTest.MEMBER, v -> PageWays.cardLink(v).press("main a[href*='/cards/']")),
  RECIPE_WITHDRAW(BrowserTest.MEMBER, v -> PageWays.recipe(v).press("main a[href$='/withdraw']")),
  RECIPE_FOLDERS(BrowserTest.MEMBER, v -> PageWays.recipe(v).open("/recipes/folders")),
  RECIPE_IMPORT(BrowserTest.MEMBER, "/recipes/import"),
  RECIPE_IMPORT_COLUMNS(BrowserTest.MEMBER, PageWays::table),
  RECIPE_IMPORT_CHECKED(
      BrowserTest.MEMBER, v -> PageWays.table(v).press("main button[value='look']")),
  POST(BrowserTest.MEMBER, "/post"),
  POST_WITHOUT_MACHINE(BrowserTest.READER, "/post"),
  POST_REFUSED(
      BrowserTest.MEMBER,
      v ->
          v.open("/post")
              .fill(Map.of("settings.speed", "1,000 mm/min", "settings.power", "5 kg"))
              .send()),
  POST_DOUBTED(BrowserTest.MEMBER, v -> PageWays.slate(v, "slate", "90000 mm/s")),
  POST_PROHIBITED(BrowserTest.MEMBER, v -> PageWays.slate(v, "PVC banner", "50 mm/s")),
  REPORT_OWN(BrowserTest.MEMBER, PageWays::own),
  REPORT_EDIT(BrowserTest.MEMBER, v -> PageWays.own(v).press("main a[href$='/edit']")),
  REPORT_WITHDRAW(BrowserTest.MEMBER, v -> PageWays.own(v).press("main a[href$='/withdraw']")),
  REPORT_REPEAT(BrowserTest.MEMBER, "/reports/" + PageWays.GRID + "/repeat"),
  RANGE_ON_MY_MACHINE(BrowserTest.MEMBER, "/range?q=navy+powder+coat&source=diode&spacing=0.1+mm"),
  FLAG(BrowserTest.MEMBER, "/flags/report/" + PageWays.GRID),
  MY_FLAGS(BrowserTest.MEMBER, "/flags"),
  CAUTION_PROPOSED(BrowserTest.MEMBER, "/cautions/new"),
  MY_ADDRESS(BrowserTest.MEMBER, "/me/email"),
  MY_SIGN_INS(BrowserTest.MEMBER, "/me/sign-ins"),
  MY_DATA(BrowserTest.MEMBER, "/me/rights"),
  LEAVING_REFUSED(
      BrowserTest.MEMBER,
      v -> v.open("/me/rights").fill(Map.of("password", "not it")).press("main button.danger")),
  QUESTIONS("/ask"),
  QUESTIONS_SEARCHED("/ask?q=navy"),
  QUESTION("/ask/" + PageWays.ASKED),
  QUESTION_ANSWERABLE(BrowserTest.MEMBER, "/ask/" + PageWays.ASKED),
  QUESTION_NEW(BrowserTest.MEMBER, "/ask/new"),
  QUESTION_LOOKED_UP(
      BrowserTest.MEMBER,
      v ->
          v.open("/ask/new")
              .fill(Map.of("title", "Navy powder coat", "text", "Brown film on navy."))
              .send()),
  QUESTION_REFUSED(BrowserTest.MEMBER, v -> v.open("/ask/new").send()),
  TALK_EDIT(BrowserTest.MEMBER, "/talk/" + PageWays.ANSWERED + "/edit"),
  TALK_HISTORY("/talk/" + PageWays.ASKED + "/history"),
  TALK_WITHDRAW(BrowserTest.MEMBER, "/talk/" + PageWays.ANSWERED + "/withdraw"),
  NOTICES("/notices"),
  NOTICE(v -> v.open("/notices").press("main .hit h3 a")),
  NOTICE_NEW(BrowserTest.MEMBER, "/notices/new"),
  INBOX(BrowserTest.ASKER, "/inbox"),
  WATCHES_EMPTY(BrowserTest.READER, "/watches"),
  WATCHES(
      BrowserTest.MEMBER,
      v -> v.open("/?q=slate").press("form[action='/watches'] button").open("/watches")),
  DESK(BrowserTest.MODERATOR, "/desk"),
  DESK_WAITING(BrowserTest.MODERATOR, "/desk/waiting"),
  DESK_FLAGS(BrowserTest.MODERATOR, "/desk/flags"),
  DESK_NOTES(BrowserTest.MODERATOR, "/desk/notes"),
  DESK_ITEM(BrowserTest.MODERATOR, "/desk/items/report/" + PageWays.GRID),
  DESK_WORDS(BrowserTest.MODERATOR, "/desk/words"),
  DESK_TERMS(BrowserTest.MODERATOR, "/desk/terms/material"),
  DESK_TERM(BrowserTest.MODERATOR, "/desk/terms/material/slate"),
  DESK_MERGE(BrowserTest.MODERATOR, "/desk/terms/material/hdf/merge?into=mdf"),
  DESK_SUPPLIERS(BrowserTest.MODERATOR, PageWays::joined),
  DESK_SUPPLIERS_JOIN(BrowserTest.MODERATOR, "/desk/suppliers/join?spelling=North+Blanks+Ltd"),
  DESK_SUPPLIERS_JOIN_REFUSED(
      BrowserTest.MODERATOR,
      v -> v.open("/desk/suppliers/join?spelling=N.B.").fill(Map.of("supplier", "n.b")).send()),
  DESK_SUPPLIERS_PART(
      BrowserTest.MODERATOR,
      v -> PageWays.joined(v).press("main a[href*='/desk/suppliers/']:not(.button)")),
  DESK_CAUTIONS(BrowserTest.MODERATOR, "/desk/cautions"),
  DESK_CAUTION(
      BrowserTest.MODERATOR,
      v -> v.open("/desk/cautions").press("main a[href*='/desk/cautions/']")),
  DESK_TALK_ITEM(BrowserTest.MODERATOR, "/desk/items/answer/" + PageWays.ANSWERED),
  DESK_RULES(BrowserTest.MODERATOR, "/desk/rules"),
  DESK_RULE(
      BrowserTest.MODERATOR, v -> v.open("/desk/rules").press("main a[href*='/desk/rules/']")),
  DESK_UNDOS(BrowserTest.MODERATOR, "/desk/undos"),
  DESK_UNDO_PLANNED(BrowserTest.MODERATOR, "/desk/undos/new"),
  DESK_LOG(BrowserTest.MODERATOR, "/desk/log"),
  DESK_MEMBERS(BrowserTest.MODERATOR, "/desk/members"),
  DESK_MEMBER(
      BrowserTest.MODERATOR, v -> v.open("/desk/members").press("main a[href*='/desk/members/']")),
  DESK_INVITATIONS(BrowserTest.MODERATOR, "/desk/invitations"),
  DESK_REQUESTS(BrowserTest.MODERATOR, "/desk/requests"),
  CLUB(BrowserTest.OWNER, "/desk/club"),
  OWNERS_FIRST_STEPS(BrowserTest.OWNER, "/desk/club/first-steps"),
  PEOPLE(BrowserTest.OWNER, "/desk/club/people"),
  SIGN_OUT(BrowserTest.OWNER, "/desk/club/sign-out"),
  WEBHOOKS(BrowserTest.OWNER, "/desk/club/webhooks"),
  BACKUPS(BrowserTest.OWNER, PageWays::backups),
  BACKUP(BrowserTest.OWNER, v -> PageWays.backups(v).press("#newest ~ dl a"));

  /** A handle or null for a stranger. */
  final String visitor;

  private final Consumer<Visit> way;
  private final boolean onlyOpened;

  PageState(String path) {
    this(null, path);
  }

  PageState(Consumer<Visit> way) {
    this(null, way);
  }

  PageState(String visitor, String path) {
    this(visitor, visit -> visit.open(path), true);
  }

  PageState(String visitor, Consumer<Visit> way) {
    this(visitor, way, false);
  }

  PageState(String visitor, Consumer<Visit> way, boolean onlyOpened) {
    this.visitor = visitor;
    this.way = way;
    this.onlyOpened = onlyOpened;
  }

  /** True where nothing is typed or sent on the way. */
  boolean isOnlyOpened() {
    return onlyOpened;
  }

  /** True where a page that is not there is what is looked at. */
  boolean isMissing() {
    return this == NOT_FOUND || this == NO_SUCH_REPORT || this == UNSUBSCRIBE_NOTHING;
  }

  void reach(Visit visit) {
    way.accept(visit);
  }
}
