-- What reports and talk name stands in the vocabulary. Terms are merged or deprecated, never
-- deleted, so a word that was read stays known.

alter table report
  add column material_kind text generated always as ('material') stored,
  add column coating_kind text generated always as ('coating') stored,
  add column colour_kind text generated always as ('colour') stored,
  add foreign key (material_kind, material) references term (kind, slug),
  add foreign key (coating_kind, coating) references term (kind, slug),
  add foreign key (colour_kind, colour) references term (kind, slug);

alter table talk
  add column material_kind text generated always as ('material') stored,
  add column coating_kind text generated always as ('coating') stored,
  add foreign key (material_kind, material) references term (kind, slug),
  add foreign key (coating_kind, coating) references term (kind, slug);
