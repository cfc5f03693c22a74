-- By which full angle the beam of a machine widens without a lens, at 1/e2, as its owner said.
alter table machine
  add column divergence_mrad double precision check (divergence_mrad > 0);
