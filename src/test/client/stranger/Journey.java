package stranger;

import java.math.BigDecimal;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import stranger.api.ConsensusApi;
import stranger.api.GridsApi;
import stranger.api.MachinesApi;
import stranger.api.MembersApi;
import stranger.api.ReportsApi;
import stranger.api.TalkApi;
import stranger.api.TokensApi;
import stranger.api.WatchesApi;
import stranger.model.Consensus;
import stranger.model.FoundReports;
import stranger.model.Grid;
import stranger.model.GridRequest;
import stranger.model.JoinRequest;
import stranger.model.Machine;
import stranger.model.MachineRequest;
import stranger.model.MemberCard;
import stranger.model.RepeatRequest;
import stranger.model.Report;
import stranger.model.ReportRequest;
import stranger.model.Results;
import stranger.model.Talk;
import stranger.model.TalkRequest;
import stranger.model.Ties;
import stranger.model.TokenRequest;
import stranger.model.Watch;
import stranger.model.WatchRequest;
import stranger.model.WrittenAxes;
import stranger.model.WrittenAxis;
import stranger.model.WrittenQuantity;
import stranger.model.WrittenQuantityOneOf;
import stranger.model.WrittenResults;
import stranger.model.WrittenSettings;

/** What a member does from the first day on, by the generated client and nothing else. */
public final class Journey implements Consumer<URI> {
  private static final String PASSWORD = "copper kettle 81 moss";
  private static final String SLATE = "slate";

  private final String handle = "stranger-" + Long.toString(System.nanoTime(), 36);

  @Override
  public void accept(URI club) {
    try {
      ApiClient stranger = client(club);
      MemberCard me =
          new MembersApi(stranger)
              .joinClub(
                  MembersApi.APIJoinClubRequest.newBuilder()
                      .joinRequest(new JoinRequest().handle(handle).password(PASSWORD))
                      .build());
      same(handle, me.getHandle());
      String token =
          new TokensApi(stranger)
              .createToken(
                  TokensApi.APICreateTokenRequest.newBuilder()
                      .tokenRequest(
                          new TokenRequest()
                              .handle(handle)
                              .password(PASSWORD)
                              .label("a journey")
                              .scopes(
                                  List.of(
                                      TokenRequest.ScopesEnum.READ, TokenRequest.ScopesEnum.WRITE)))
                      .build())
              .getToken();
      ApiClient member = client(club);
      member.setRequestInterceptor(asked -> asked.header("Authorization", "Bearer " + token));
      settings(member);
      talk(member);
    } catch (ApiException e) {
      throw new IllegalStateException(e.getCode() + " " + e.getResponseBody(), e);
    }
  }

  private static ApiClient client(URI club) {
    ApiClient client = new ApiClient();
    client.updateBaseUri(club.toString().replaceFirst("/$", ""));
    return client;
  }

  private void settings(ApiClient member) throws ApiException {
    Machine machine =
        new MachinesApi(member)
            .createMachine(
                MachinesApi.APICreateMachineRequest.newBuilder()
                    .idempotencyKey(key())
                    .machineRequest(
                        new MachineRequest()
                            .name("Shed tube")
                            .source(MachineRequest.SourceEnum.CO2)
                            .wavelength(text("10.6 um"))
                            .ratedPower(text("40 W"))
                            .beamDiameter(text("150 um"))
                            .motion(MachineRequest.MotionEnum.GANTRY))
                    .build());
    ReportsApi reports = new ReportsApi(member);
    Report report =
        reports.createReport(
            ReportsApi.APICreateReportRequest.newBuilder()
                .idempotencyKey(key())
                .reportRequest(result(machine).quality(4))
                .build());
    same(304.8, report.getSettings().getSpeed().getValue().doubleValue());
    same("12 in/s", report.getSettings().getSpeed().getWritten());
    Report repeat =
        reports.createRepeat(
            ReportsApi.APICreateRepeatRequest.newBuilder()
                .id(report.getId())
                .idempotencyKey(key())
                .repeatRequest(
                    new RepeatRequest()
                        .machine(machine.getId())
                        .settings(settings())
                        .effect(RepeatRequest.EffectEnum.RIGHT)
                        .quality(5))
                .build());
    same(report.getId(), repeat.getRepeatOf());
    FoundReports found =
        reports.searchReports(
            ReportsApi.APISearchReportsRequest.newBuilder()
                .material(List.of(SLATE))
                .member(List.of(handle))
                .build());
    same(2, found.getTotal());
    same(report.getMaterial().getValue(), found.getHits().get(0).getMaterial().getValue());
    Consensus consensus =
        new ConsensusApi(member)
            .getConsensus(
                ConsensusApi.APIGetConsensusRequest.newBuilder()
                    .material(List.of(SLATE))
                    .member(List.of(handle))
                    .machine(machine.getId().toString())
                    .build());
    same(2, consensus.getGroups().get(0).getTrials());
    grid(member, machine);
  }

  /** A result; its quantities are written in both ways. */
  private static ReportRequest result(Machine machine) {
    return new ReportRequest()
        .machine(machine.getId())
        .material(SLATE)
        .process(ReportRequest.ProcessEnum.SURFACE_ENGRAVING)
        .settings(settings())
        .effect(ReportRequest.EffectEnum.RIGHT);
  }

  private static WrittenSettings settings() {
    return new WrittenSettings()
        .power(text("50 %"))
        .speed(text("12 in/s"))
        .lineSpacing(pair("0.1", "mm"))
        .passes(1);
  }

  private static void grid(ApiClient member, Machine machine) throws ApiException {
    GridsApi grids = new GridsApi(member);
    GridRequest wanted =
        new GridRequest()
            .machine(machine.getId())
            .material(SLATE)
            .process(GridRequest.ProcessEnum.SURFACE_ENGRAVING)
            .settings(new WrittenSettings().lineSpacing(pair("0.1", "mm")))
            .axes(
                new WrittenAxes()
                    .across(axis(WrittenAxis.SettingEnum.POWER, text("40 %"), text("60 %")))
                    .down(
                        axis(
                            WrittenAxis.SettingEnum.SPEED, pair("200", "mm/s"), text("400 mm/s"))));
    Grid planned =
        grids.planGrid(GridsApi.APIPlanGridRequest.newBuilder().gridRequest(wanted).build());
    same(4, planned.getPlan().getTests());
    Grid kept =
        grids.addGrid(
            GridsApi.APIAddGridRequest.newBuilder()
                .idempotencyKey(key())
                .gridRequest(wanted)
                .build());
    Results results =
        grids.putGridResults(
            GridsApi.APIPutGridResultsRequest.newBuilder()
                .id(kept.getId())
                .ifMatch("\"" + kept.getVersion() + "\"")
                .writtenResults(
                    new WrittenResults()
                        .effects(
                            List.of(
                                List.of(
                                    WrittenResults.EffectsEnum.RIGHT,
                                    WrittenResults.EffectsEnum.TOO_MUCH),
                                Arrays.asList(WrittenResults.EffectsEnum.TOO_LITTLE, null))))
                .build());
    same(3, results.getJudged());
  }

  private void talk(ApiClient member) throws ApiException {
    Watch watch =
        new WatchesApi(member)
            .addWatch(
                WatchesApi.APIAddWatchRequest.newBuilder()
                    .idempotencyKey(key())
                    .watchRequest(new WatchRequest().query("material=" + SLATE).label("Slate"))
                    .build());
    same("Slate", watch.getLabel());
    TalkApi talk = new TalkApi(member);
    Talk question =
        talk.askQuestion(
            TalkApi.APIAskQuestionRequest.newBuilder()
                .idempotencyKey(key())
                .talkRequest(
                    new TalkRequest()
                        .title("Pale marks on slate")
                        .text("They fade after oil.")
                        .ties(new Ties().material(SLATE)))
                .build());
    Talk answer =
        talk.postAnswer(
            TalkApi.APIPostAnswerRequest.newBuilder()
                .id(question.getId())
                .idempotencyKey(key())
                .talkRequest(new TalkRequest().text("Slow down."))
                .build());
    same(question.getId(), answer.getQuestion());
  }

  private static WrittenAxis axis(
      WrittenAxis.SettingEnum setting, WrittenQuantity one, WrittenQuantity other) {
    return new WrittenAxis().setting(setting).values(List.of(one, other));
  }

  private static WrittenQuantity text(String written) {
    return new WrittenQuantity(written);
  }

  private static WrittenQuantity pair(String value, String unit) {
    return new WrittenQuantity(new WrittenQuantityOneOf().value(new BigDecimal(value)).unit(unit));
  }

  private static String key() {
    return UUID.randomUUID().toString();
  }

  private static void same(Object expected, Object found) {
    if (!expected.equals(found)) {
      throw new AssertionError("expected " + expected + ", found " + found);
    }
  }
}
