-- A row for each table that the scenario leaves empty, with what is hard to write down: line ends,
-- tabs, backslashes, letters beyond the alphabet, bytes, dates before our era, the ends of numbers.
with somebody as (
  select min(cast(id as text))::uuid as a, max(cast(id as text))::uuid as b
  from member where status = 'active'
)
select set_config('fill.a', a::text, false), set_config('fill.b', b::text, false),
  set_config('fill.report', (select min(id::text) from report), false)
from somebody;

insert into erasure (member_id, choice, at) values
  ('00000000-0000-4000-8000-00000000000e', 'remove', '2026-01-02 03:04:05.678901+00');
insert into api_token (id, member_id, hash, label, scopes, expires_at)
select gen_random_uuid(), current_setting('fill.a')::uuid, '\x0001ff', E'tab\t, line\n, \\., é, 木, 🔥',
  'read write', 'infinity';
insert into token_network (token_id, network) select id, '192.0.2.0/24' from api_token;
insert into sign_in (member_id, event, network, label)
select current_setting('fill.a')::uuid, 'signed-in', '192.0.2.0/24', 'Firefox';
insert into attempt (kind, subject, last_at, count) values ('sign-in', 'of nobody', now(), 3);
insert into session (id_hash, id, member_id, label, expires_at)
select '\x5e55', gen_random_uuid(), current_setting('fill.a')::uuid, 'Firefox', now() + interval '1 day';
insert into idempotency (member_id, key, fingerprint, status, body)
select current_setting('fill.a')::uuid, 'key', '\xff00', 201, E'{"a": "\\\\N"}';
insert into invitation (id, code_hash, member_id, most, created_at, expires_at)
select gen_random_uuid(), '\x1234', current_setting('fill.a')::uuid, 3, now(), now() + interval '9 days';
insert into join_request (member_id, text, asked_at)
select current_setting('fill.b')::uuid, 'May I?', now();
insert into once_link (secret_hash, kind, member_id, created_at, expires_at)
select '\x77', 'reset', current_setting('fill.a')::uuid, now(), now() + interval '1 hour';
insert into owner_code (code_hash, expires_at) values ('\x99', now() + interval '1 day')
on conflict do nothing;
insert into mail_outbox (member_id, recipient, kind, subject, body, due_at)
select current_setting('fill.a')::uuid, 'a@club.example', 'digest', 'News', E'Two\r\nlines', now();
insert into identity_link (issuer, subject, member_id)
select 'https://login.club.example', 'a|b', current_setting('fill.a')::uuid;
insert into sso_arrival (secret_hash, issuer, subject, suggestion, expires_at)
values ('\xaa', 'https://login.club.example', 'c', 'cee', now() + interval '1 hour');
insert into sso_state (state_hash, expires_at) values ('\xbb', now() + interval '1 hour');
insert into invented_member (member_id) select current_setting('fill.b')::uuid;
insert into first_step (member_id, step) select current_setting('fill.a')::uuid, 'units';
insert into told (member_id, read_to) select current_setting('fill.a')::uuid, '0044-03-15 12:00:00+00 BC';
insert into example_club (run, state, done, total, member_id, asked_at, leased_until)
select gen_random_uuid(), 'there', 1, 1, current_setting('fill.a')::uuid, now(), now();

insert into catalog_merge (id, kind, loser, winner, mapping)
select gen_random_uuid(), a.kind, a.slug, b.slug, '{"was": [1.50, 1e-7, null, "é"]}'
from term a join term b on a.kind = b.kind and a.slug < b.slug order by a.kind, a.slug, b.slug limit 1;
insert into catalog_revision (subject, subject_id, version, after, why)
values ('term', 'material/maple', 1, '{"a": 1}', 'for the test');
insert into unfiled (id, kind, written, folded) values
  (gen_random_uuid(), 'material', 'wood of a dragon', 'wood of a dragon') on conflict do nothing;
insert into desk_flag (id, member_id, entry_id, reason, state, created_at)
select gen_random_uuid(), current_setting('fill.b')::uuid, current_setting('fill.report')::uuid,
  'wrong-numbers', 'open', now();
insert into desk_rule_note (rule, entry_id, detail, mode, at)
select 'burst', current_setting('fill.report')::uuid, 'many', 'note', now();
insert into desk_caution_proposal (id, caution_id, base_version, rule, why, member_id, created_at, state)
select gen_random_uuid(), 'smoke', 0, '{"id": "smoke"}', 'why not', current_setting('fill.a')::uuid, now(),
  'waiting';
insert into desk_undo (id, member_id, since, reason, state, started_by, started_at)
select '00000000-0000-4000-8000-0000000000dd', current_setting('fill.b')::uuid, now(), 'spam', 'done',
  current_setting('fill.a')::uuid, now();
insert into desk_undo_item (run_id, step, kind, item_id, was, back_to)
select '00000000-0000-4000-8000-0000000000dd', 'remove', 'report', current_setting('fill.report')::uuid,
  'live', 1;

insert into entry (id, kind, member_id, state, version, parent_id, title, created_at, updated_at)
select x.id::uuid, x.kind, current_setting('fill.a')::uuid, 'live', 1, x.parent::uuid, x.kind, now(), now()
from (values
  ('00000000-0000-4000-8000-000000000001', 'photo', current_setting('fill.report')),
  ('00000000-0000-4000-8000-000000000002', 'grid', null),
  ('00000000-0000-4000-8000-000000000003', 'sample', null),
  ('00000000-0000-4000-8000-000000000004', 'lot', null),
  ('00000000-0000-4000-8000-000000000005', 'recipe', null),
  ('00000000-0000-4000-8000-000000000007', 'eyewear', null),
  ('00000000-0000-4000-8000-000000000006', 'room', null),
  ('00000000-0000-4000-8000-000000000008', 'fixture', null)) as x (id, kind, parent);
insert into photo (id, width, height, size_bytes, picture, thumb, caption)
values ('00000000-0000-4000-8000-000000000001', 1, 1, 7, '\x00ff5c4e0a', '\x0d09', 'Ash, "quoted"');
insert into grid (id, written, asked_hash, number_style, source, wavelength_nm, rated_power_w, motion,
  regime, gated, max_speed_mm_s)
values ('00000000-0000-4000-8000-000000000002', '{"laser": {}}', 'x', 'any', 'co2',
  10600.000000000002, 1e-300, 'gantry', 'cw', true, 1.7976931348623157e308);
insert into grid_photo (grid_id, width, height, size_bytes, picture, corners, taken_at)
values ('00000000-0000-4000-8000-000000000002', 1, 1, 1, '\x5c',
  '{0.1,0.30000000000000004,1,0,1,1,0,1}', now());
insert into sample (id, report_id, box, notes)
select '00000000-0000-4000-8000-000000000003', current_setting('fill.report')::uuid, '3', E'\\N';
insert into lot (id, supplier, material, received, received_on, batch, inspection, shared)
values ('00000000-0000-4000-8000-000000000004', ' The  shop', 'maple', 2147483647, '2024-02-29', E'B\t7',
  'Scratched', true);
update machine set housing = 'open', divergence_mrad = 0.30000000000000004
where number = (select min(number) from machine);
insert into supplier_spelling (code, spelling, head_code, head, member_id, at, reason)
select supplier_code_of('Shop "é"'), 'Shop "é"', supplier_code_of(' The  shop'), 'The shop',
  current_setting('fill.a')::uuid, '0044-03-15 12:00:00+00 BC', E'One\nshop';
insert into recipe (id, written, asked_hash, number_style, folder, words, machine_id, source,
  wavelength_nm, rated_power_w, motion, regime, gated, used_at)
select '00000000-0000-4000-8000-000000000005', '{"name": "x"}', 'x', 'any', E'\\N', 'maple', m.id,
  'co2', 10600.000000000002, 1e-300, 'gantry', 'cw', true, now()
from machine m order by m.number limit 1;
insert into recipe_report (recipe_id, report_id, version)
select '00000000-0000-4000-8000-000000000005', current_setting('fill.report')::uuid, 1;
insert into recipe_link (id, recipe_id, secret_hash, version, created_at, opened_at)
values ('00000000-0000-4000-8000-0000000000ee', '00000000-0000-4000-8000-000000000005',
  decode(repeat('5c', 32), 'hex'), 1, now(), now());
insert into eyewear (id, name, marking)
values ('00000000-0000-4000-8000-000000000007', 'Green pair', E'OD 6+ @ 900-1070 nm\nD 1064 LB6');
insert into room (id, name, written, number_style)
values ('00000000-0000-4000-8000-000000000006', 'Shed', '{"name": "Shed"}', 'comma');
insert into room_check (room_id, code, every_days, last_on)
values ('00000000-0000-4000-8000-000000000006', 'extinguisher', 30, '2024-02-29');
insert into fixture (id, name, place, row_count, column_count, pieces, lengths, number_style)
values ('00000000-0000-4000-8000-000000000008', 'Jig', 'Shelf', 2, 3, 5,
  '{"pitchX": {"text": "95 mm"}, "pitchY": {"text": "95 mm"}}', 'any');
insert into kept_photo (entry_id, width, height, size_bytes, picture, taken_at)
values ('00000000-0000-4000-8000-000000000008', 1, 1, 1, '\x5c', now());
insert into tag (code, entry_id) values ('K7F-4', '00000000-0000-4000-8000-000000000003');
insert into parked_photo (id, member_id, form_id, place, width, height, size_bytes, picture, thumb, parked_at)
select gen_random_uuid(), current_setting('fill.a')::uuid, gen_random_uuid(), 0, 1, 1, 2, '\x00', '\x01', now();

insert into watch (id, member_id, version, label, query, mail, created_at)
select '00000000-0000-4000-8000-0000000000aa', current_setting('fill.a')::uuid, 1, 'Maple', 'q=maple', true,
  now();
insert into watch_hit (member_id, watch_id, entry_id, found_at)
select current_setting('fill.a')::uuid, '00000000-0000-4000-8000-0000000000aa',
  current_setting('fill.report')::uuid, now();
insert into watch_digest (member_id, sent_at) select current_setting('fill.a')::uuid, now();
insert into webhook (id, member_id, label, url, events, secret, state, version, created_at, updated_at)
select '00000000-0000-4000-8000-0000000000bb', current_setting('fill.a')::uuid, 'Chat',
  'https://chat.example/', '{result.posted,"with, comma"}', 'whsec_AAAA', 'off', 1, now(), now();
insert into webhook_delivery (id, webhook_id, event, shown, body, state, due_at, created_at)
values (gen_random_uuid(), '00000000-0000-4000-8000-0000000000bb', 'webhook.test', false, '{}',
  'waiting', now(), now());
insert into data_package (id, made_at, seen, described, size_bytes)
values ('00000000-0000-4000-8000-0000000000cc', now(), pg_current_xact_id(), '{}', 1);
insert into data_package_part (package_id, position, bytes)
values ('00000000-0000-4000-8000-0000000000cc', 0, '\x50');
insert into backup (id, cause, state, node, started_at, ended_at, name, path, size_bytes, made_at,
  program, tables, seen_at, trial, tried_at, trial_says)
values (gen_random_uuid(), 'by-hand', 'kept', 'shed', now(), now(), 'emberwell-shed.zip',
  E'C:\\shed\tx', 9223372036854775807, now(), '1.0', 27, now(), 'failed', now(), 'No room.');
insert into saved_bench (member_id, saved_at) select current_setting('fill.a')::uuid, now();
insert into sent_bench (member_id, id, sent_at)
select current_setting('fill.a')::uuid, '00000000-0000-4000-8000-0000000000dd', now();
insert into sent_bench_part (sent_id, part, bytes)
values ('00000000-0000-4000-8000-0000000000dd', 0, '\x50');
