-- When members last saved a copy of their bench, so that they can be reminded.
create table saved_bench (
  member_id  uuid primary key references member (id) on delete cascade,
  saved_at   timestamptz not null
);

-- A copy that a member sent and looks at before it is restored; one each, gone within hours. In
-- parts, so that no node ever holds it whole in memory.
create table sent_bench (
  member_id  uuid primary key references member (id) on delete cascade,
  id         uuid not null unique,
  sent_at    timestamptz not null
);
create index sent_bench_age on sent_bench (sent_at);

create table sent_bench_part (
  sent_id  uuid not null references sent_bench (id) on delete cascade,
  part     integer not null check (part >= 0),
  bytes    bytea not null,
  primary key (sent_id, part)
);
