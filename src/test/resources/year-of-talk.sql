-- A year of talk of an invented club, for YearOfTalkTest. Names in braces are its figures.
-- One uuid per number and kind: aa members, bb questions, cc answers, dd notices, ee watches.
create function pg_temp.made(kind text, number bigint) returns uuid immutable language sql as
  'select cast(kind || ''000000-0000-4000-8000-'' || lpad(cast(number as text), 12, ''0'') as uuid)';

create function pg_temp.material(n bigint) returns text immutable language sql as
  'select (array[''slate'', ''cork'', ''walnut'', ''brass'', null])[1 + n % 5]';

create function pg_temp.words(n bigint) returns text immutable language sql as
  'select (array[''halo'', ''banding'', ''smoke'', ''focus'', ''belt'', ''lens'', ''fume''])[1 + n % 7]';

-- one in fifty waits for a look
create function pg_temp.state(n bigint) returns text immutable language sql as
  'select case when n % 50 = 0 then ''waiting'' else ''live'' end';

create function pg_temp.author(n bigint) returns uuid immutable language sql as
  'select pg_temp.made(''aa'', 1 + n * 7919 % {MEMBERS})';

insert into member (id, handle, email, role, status)
select pg_temp.made('aa', n), 'year-' || n, 'year' || n || '@club.example',
  case when n <= 3 then 'moderator' else 'member' end, 'active'
from generate_series(1, {MEMBERS}) as n;

insert into entry (id, kind, version, state, member_id, parent_id, title, created_at, updated_at)
select pg_temp.made('bb', n), 'question', 1, case when n = 1 then 'live' else pg_temp.state(n) end,
  pg_temp.author(n), null, 'Question ' || n || ' about ' || pg_temp.words(n), at, at
from generate_series(1, {QUESTIONS}) as n,
  lateral (select now() - interval '1 year' * (1 - n / {QUESTIONS}.0) as at) as moment;

insert into talk (id, kind, body, material, active_at)
select e.id, e.kind, 'What to do about ' || pg_temp.words(n) || '?', pg_temp.material(n),
  e.created_at
from generate_series(1, {QUESTIONS}) as n join entry e on e.id = pg_temp.made('bb', n);

-- a fifth of all answers are given to one question
insert into entry (id, kind, version, state, member_id, parent_id, title, created_at, updated_at)
select pg_temp.made('cc', n), 'answer', 1, pg_temp.state(n), pg_temp.author(n),
  pg_temp.made('bb', case when n % 5 = 0 then 1 else 2 + n % ({QUESTIONS} - 1) end),
  'Mind the ' || pg_temp.words(n) || ', answer ' || n, at, at
from generate_series(1, {ANSWERS}) as n,
  lateral (select now() - interval '1 year' * (1 - n / {ANSWERS}.0) as at) as moment;

insert into talk (id, kind, body, active_at)
select id, kind, title, created_at from entry where kind = 'answer';

insert into entry (id, kind, version, state, member_id, title, created_at, updated_at)
select pg_temp.made('dd', n), 'notice', 1, 'live', pg_temp.author(n),
  'Notice ' || n || ' on ' || pg_temp.words(n), at, at
from generate_series(1, {NOTICES}) as n,
  lateral (select now() - interval '1 year' * (1 - n / {NOTICES}.0) as at) as moment;

insert into talk (id, kind, body, material, active_at)
select e.id, e.kind, 'Text', pg_temp.material(n), e.created_at
from generate_series(1, {NOTICES}) as n join entry e on e.id = pg_temp.made('dd', n);

update talk q
set answers = (select count(*) from entry a where a.parent_id = q.id and a.state = 'live')
where q.kind = 'question';

insert into watch (id, member_id, version, label, query, mail, feed_token, created_at)
select pg_temp.made('ee', n), pg_temp.made('aa', n), 1, 'Watch ' || n,
  'material=' || coalesce(pg_temp.material(n), 'oak'), n % 3 = 0,
  case when n = 1 then '{FEED}' end, now() - interval '1 day'
from generate_series(1, {MEMBERS}) as n;

insert into watch_hit (member_id, watch_id, entry_id, found_at, mailed_at)
select pg_temp.made('aa', m), pg_temp.made('ee', m),
  pg_temp.made('bb', (m * 31 + n * 17) % {QUESTIONS} + 1), now() - interval '1 hour', now()
from generate_series(2, {MEMBERS}) as m, generate_series(1, {HITS_EACH}) as n
on conflict do nothing;

-- the busy member
insert into watch_hit (member_id, watch_id, entry_id, found_at, mailed_at)
select pg_temp.made('aa', 1), pg_temp.made('ee', 1), pg_temp.made('bb', n),
  now() - interval '1 hour', now()
from generate_series(1, {BUSY_HITS}) as n
on conflict do nothing;

analyze;
