-- Links by which people without an account read the job card of a recipe.
create table recipe_link (
  id          uuid primary key,
  recipe_id   uuid not null references recipe (id) on delete cascade,
  -- of the secret at the end of the address; the secret itself is kept nowhere
  secret_hash bytea not null unique check (octet_length(secret_hash) = 32),
  -- the recipe's newest when the link was made; older ones it never shows
  version     integer not null check (version > 0),
  created_at  timestamptz not null,
  opened_at   timestamptz,
  -- null: it works
  ended_at    timestamptz check (ended_at >= created_at)
);

create index recipe_link_recipe on recipe_link (recipe_id);
