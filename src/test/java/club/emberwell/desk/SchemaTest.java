package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.EntryRef;
import club.emberwell.grid.PlannedGrids;
import club.emberwell.member.Actor;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the tables hold to themselves, whatever the program does. */
@QuarkusTest
class SchemaTest {
  @Inject Cast cast;
  @Inject PlannedGrids grids;

  private EntryRef report;
  private EntryRef question;
  private UUID machine;
  private UUID webhook;
  private String grid;
  private Actor member;

  @BeforeEach
  void oneOfEach() {
    member = cast.member();
    report = cast.report(member);
    question = cast.question(member, "Words of " + report.id());
    machine = UUID.randomUUID();
    cast.run(
        ("insert into machine (id, member_id, name, source, wavelength_nm, rated_power_w, motion,"
                + " regime, gated, written, number_style, version, created_at, updated_at) values"
                + " ('%s', '%s', 'Shed', 'diode', 455, 10, 'gantry', 'cw', true, '{}', 'any', 1,"
                + " now(), now())")
            .formatted(machine, member.memberId()));
    webhook = UUID.randomUUID();
    cast.run(
        ("insert into webhook (id, member_id, label, url, events, secret, state, version,"
                + " created_at, updated_at) values ('%s', '%s', 'Chat', 'https://chat.example/',"
                + " '{result.posted}', 'whsec_AAAA', 'off', 1, now(), now())")
            .formatted(webhook, member.memberId()));
    cast.run(
        ("insert into webhook_delivery (id, webhook_id, event, shown, body, state, due_at,"
                + " created_at) values (gen_random_uuid(), '%s', 'webhook.test', false, '{}',"
                + " 'waiting', now(), now())")
            .formatted(webhook));
    grid = grids.plan(member, 2);
    cast.run(
        ("insert into grid_photo (grid_id, width, height, size_bytes, picture, taken_at)"
                + " values ('%s', 1, 1, 1, '\\x00', now())")
            .formatted(grid));
    UUID parked = UUID.randomUUID();
    cast.run(
        ("insert into parked_photo (id, member_id, form_id, place, width, height, size_bytes,"
                + " picture, thumb, parked_at)"
                + " values ('%s', '%s', '%s', 0, 1, 1, 2, '\\x00', '\\x00', now())")
            .formatted(parked, member.memberId(), parked));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tag (code) values ('K7F4')",
        "tag (code) values ('KOF-4')",
        "tag (code, entry_id) values ('K7F-4', '00000000-0000-0000-0000-000000000000')",
        "sample (id) select id from entry where kind = 'report' limit 1",
        "lot (id, supplier, material, received) select id, 'x', 'y', 1 from entry"
            + " where kind = 'report' limit 1",
        "recipe (id, written, asked_hash, number_style, words, machine_id, source, wavelength_nm,"
            + " rated_power_w, motion, regime, gated) select e.id, '{}', 'x', 'any', 'x', m.id,"
            + " m.source, 1, 1, m.motion, m.regime, true from entry e, machine m"
            + " where e.kind = 'report' limit 1",
        "eyewear (id, name, marking) select id, 'x', 'y' from entry where kind = 'report' limit 1",
        "room (id, name, written, number_style) select id, 'x', '{}', 'any' from entry"
            + " where kind = 'report' limit 1"
      })
  void stockIsOfItsOwnKindsAndTagsAreOfTheAlphabet(String row) {
    refused("insert into " + row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "received = 0",
        "usable = -1",
        "usable = 10",
        "burned = -1",
        "burned = 10",
        "usable = 4, burned = 5",
        "supplier = ''",
        "batch = ''",
        "inspection = ''",
        "shared = null",
        "material = ''",
        "notes = ''"
      })
  void aLotsNumbersFitEachOther(String change) {
    UUID lot = stock("lot");
    cast.run(
        "insert into lot (id, supplier, material, received) values ('%s', 'x', 'y', 9)"
            .formatted(lot));
    refused("update lot set " + change + " where id = '" + lot + "'");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"'ladder', 30, null", "'extinguisher', 0, null", "'smoke-detector', 30, null"})
  void aRoomHasEachCheckOnceWithDaysThatCanBe(String check) {
    UUID room = stock("room");
    cast.run(
        "insert into room (id, name, written, number_style) values ('%s', 'x', '{}', 'any')"
            .formatted(room));
    cast.run("insert into room_check values ('%s', 'smoke-detector', 30, null)".formatted(room));
    refused("insert into room_check values ('" + room + "', " + check + ")");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "name = ''",
        "place = ''",
        "row_count = 0",
        "column_count = 0",
        "pieces = 0",
        "pieces = 7",
        "lengths = '[]'",
        "number_style = 'none'"
      })
  void aFixtureHasPositionsForItsPieces(String change) {
    UUID fixture = stock("fixture");
    cast.run(
        ("insert into fixture (id, name, row_count, column_count, pieces, lengths, number_style)"
                + " values ('%s', 'x', 2, 3, 6, '{}', 'any')")
            .formatted(fixture));
    refused("update fixture set " + change + " where id = '" + fixture + "'");
    cast.run(
        ("insert into kept_photo (entry_id, width, height, size_bytes, picture, taken_at)"
                + " values ('%s', 1, 1, 1, '\\x00', now())")
            .formatted(fixture));
    refused("update kept_photo set width = 0 where entry_id = '" + fixture + "'");
    refused("update kept_photo set size_bytes = 7 where entry_id = '" + fixture + "'");
  }

  @Test
  void aSampleShowsOneThingAndACodeIsGivenOnce() {
    UUID sample = stock("sample");
    cast.run("insert into sample (id, report_id) values ('%s', null)".formatted(sample));
    cast.run("insert into tag (code, entry_id) values ('M4T-H', '%s')".formatted(sample));
    refused("update sample set box = '' where id = '" + sample + "'");
    refused("update sample set report_id = '" + sample + "' where id = '" + sample + "'");
    refused("insert into tag (code, entry_id) values ('M5T-H', '" + sample + "')");
    refused("insert into tag (code) values ('M4T-H')");
    cast.run("delete from entry where id = '%s'".formatted(sample));
    assertEquals(
        1, cast.count("select count(*) from tag where code = 'M4T-H' and entry_id is null"));
  }

  private UUID stock(String kind) {
    UUID id = UUID.randomUUID();
    cast.run(
        ("insert into entry (id, kind, member_id, state, version, title, created_at, updated_at)"
                + " values ('%s', '%s', '%s', 'live', 1, 'x', now(), now())")
            .formatted(id, kind, member.memberId()));
    return id;
  }

  private String about(String change) {
    String table = change.substring(0, change.indexOf(' '));
    String where =
        switch (table) {
          case "trial" -> "report_id = '" + report.id() + "'";
          case "talk" -> "id = '" + question.id() + "'";
          case "grid_photo" -> "grid_id = '" + grid + "'";
          case "grid" -> "id = '" + grid + "'";
          case "machine" -> "id = '" + machine + "'";
          case "webhook" -> "id = '" + webhook + "'";
          case "webhook_delivery" -> "webhook_id = '" + webhook + "'";
          case "parked_photo" -> "member_id = '" + member.memberId() + "'";
          case "member" -> "id = '" + member.memberId() + "'";
          default -> "id = '" + report.id() + "'";
        };
    return "update " + change.replaceFirst(" ", " set ") + " where " + where;
  }

  private void refused(String sql) {
    PersistenceException refused =
        assertThrows(PersistenceException.class, () -> cast.run(sql), () -> sql);
    assertTrue(refused.getMessage().contains("violates"), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "machine source = 'CO2'",
        "machine motion = 'Gantry'",
        "machine regime = 'CW'",
        "machine pulse_control = 'free'",
        "machine number_style = 'COMMA'",
        "webhook state = 'On'",
        "webhook_delivery state = 'sent'",
        "webhook_delivery event = 'Result posted'",
        "report source = 'DIODE'",
        "report motion = 'arm'",
        "report regime = 'pulsed'",
        "report process = 'engraving'",
        "report number_style = 'roman'",
        "report material = 'no-such-material'",
        "report coating = 'no-such-coating', coating_written = 'x'",
        "report colour = 'no-such-colour', colour_written = 'x'",
        "report result_colour = 'no-such-colour', result_colour_written = 'x'",
        "trial effect = 'RIGHT', quality = null",
        "talk source = 'CO2'",
        "talk process = 'cutting'",
        "talk material = 'no-such-material'",
        "talk coating = 'no-such-coating'",
        "talk kind = 'Question'",
        "grid source = 'CO2'",
        "grid number_style = 'COMMA'",
        "grid motion = 'arm'",
        "entry state = 'LIVE'",
        "entry kind = 'REPORT'",
        "member role = 'Owner'",
        "member status = 'gone'"
      })
  void aCodeIsOneOfThoseThereAre(String change) {
    refused(about(change));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "machine wavelength_nm = 0",
        "machine rated_power_w = -1",
        "machine lens_focal_mm = 0",
        "machine beam_diameter_um = 0",
        "machine max_speed_mm_s = -1",
        "machine version = 0",
        "machine name = ''",
        "machine model = ''",
        "webhook url = 'ftp://chat.example'",
        "webhook label = ''",
        "webhook events = '{}'",
        "webhook events = '{null}'",
        "webhook secret = 'plain'",
        "webhook left_out = -1",
        "webhook_delivery status = 99",
        "webhook_delivery tries = -1",
        "report wavelength_nm = -455",
        "report rated_power_w = 0",
        "report lens_focal_mm = -50",
        "report beam_diameter_um = 0",
        "report max_speed_mm_s = 0",
        "report thickness_mm = 0",
        "report material_written = ''",
        "report result_colour_written = ''",
        "report supplier = ''",
        "report remarks = '{}'",
        "report written = '[]'",
        "trial quality = 0",
        "trial quality = 6",
        "trial grid_row = -1, grid_column = 0",
        "grid_photo width = 0",
        "grid_photo size_bytes = 7",
        "grid_photo corners = '{0,0,1,0,1,1}'",
        "grid_photo corners = '{0,0,1,0,1,1,0,1.1}'",
        "grid_photo corners = '{0,0,1,0,1,1,0,-0.1}'",
        "parked_photo width = 0",
        "parked_photo size_bytes = 7",
        "parked_photo caption = ''",
        "parked_photo alt = ''",
        "trial position = -1",
        "trial settings = '[]'",
        "trial defects = array[null]",
        "talk answers = -1",
        "talk body = ''",
        "grid rated_power_w = 0",
        "grid written = '[]'",
        "grid asked_hash = ''",
        "entry version = 0"
      })
  void aNumberOrATextIsPossible(String change) {
    refused(about(change));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "webhook old_secret = 'whsec_AAAA'",
        "webhook_delivery state = 'done'",
        "webhook_delivery ended_at = now()",
        "trial effect = 'too-little'",
        "trial settings = settings - 'powerPercent'",
        "trial settings = settings || '{\"powerW\": 4}'",
        "trial grid_row = 0",
        "report written = written - 'laser'",
        "report written = written || '{\"machine\": \"x\"}'",
        "report coating = 'powder-coat'",
        "report result_colour = 'gold'",
        "report repeat_of = id",
        "grid written = '{}'",
        "grid written = '{\"machine\": \"x\"}'",
        "talk accepted_id = id",
        "entry parent_id = id",
        "entry origin = 'https://club.example'",
        "entry kind = 'photo'",
        "entry kind = 'comment'",
        "talk kind = 'comment'",
        "member status = 'erased'",
        "member email_confirmed_at = now()"
      })
  void whatExcludesOrNeedsSomethingElseIsHeldToIt(String change) {
    refused(about(change));
  }

  @Test
  void aReportIsOfAMachineOrOfALaserThatIsDescribed() {
    String id = "'" + machine + "'";
    String written = "(written - 'laser') || '{\"machine\": \"" + machine + "\"}'";
    refused(about("report machine_id = " + id));
    refused(about("report written = " + written));
    cast.run(about("report machine_id = " + id + ", written = " + written));
  }

  @Test
  void whoDidSomethingIsAMember() {
    String people =
        "select count(*) from information_schema.columns c where c.table_schema = 'public' and"
            + " c.udt_name = 'uuid' and (c.column_name = 'member_id' or c.column_name like '%_by')"
            + " and c.table_name not in ('erasure', 'audit_line')";
    String held =
        "select count(distinct k.conrelid || '-' || a.attname) from pg_constraint k"
            + " join pg_attribute a on a.attrelid = k.conrelid and a.attnum = any (k.conkey)"
            + " where k.contype = 'f' and k.confrelid = cast('member' as regclass)";
    assertTrue(cast.count(people) > 20);
    assertEquals(cast.count(people), cast.count(held));
  }

  @Test
  void anIndexIsCalledByItsTable() {
    assertEquals(
        0,
        cast.count(
            "select count(*) from pg_indexes where schemaname = 'public'"
                + " and tablename <> 'flyway_schema_history'"
                + " and not starts_with(indexname, tablename || '_')"));
  }
}
