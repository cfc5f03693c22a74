package club.emberwell.search;

import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import java.util.Optional;
import java.util.UUID;

/** Finds the laser of a machine for those who may see it. */
@FunctionalInterface
interface MachineLasers {
  Optional<Laser> find(UUID machine, Actor actor);
}
