package club.emberwell.consensus.answer;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.Transfer;
import club.emberwell.laser.dose.Transfer.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the start on a machine among the trials of peers, or why there is none. */
record Starting(Laser mine, Process process, Target target) {
  /** Peers beyond these, the nearest first, have no say in whether a dose may be carried over. */
  private static final int JUDGED = 60;

  /**
   * @param start empty where no number may be carried over
   * @param refusal why none may, in sentences; empty where there is a start
   */
  record Found(Optional<Start> start, List<String> refusal) {}

  private record Candidate(Whole from, Transfer.Outcome outcome, Aim.Reached reached) {}

  /**
   * From the nearest peer from which the dose may be carried over, a sound verdict before a weak.
   * Where that holds for less than half of the peers, their middle says nothing about the machine:
   * then the dose is that of the one peer.
   */
  Found among(List<Whole> nearestFirst) {
    List<Whole> peers = nearestFirst.subList(0, Math.min(JUDGED, nearestFirst.size()));
    long carried = peers.stream().filter(this::carries).count();
    boolean unlike = target.ofAll() && 2 * carried < peers.size();
    return (unlike ? new Starting(mine, process, target.ofOneTrial()) : this).first(peers);
  }

  private boolean carries(Whole peer) {
    return plans(peer).stream().anyMatch(plan -> judged(peer, plan).verdict().givesNumber());
  }

  private Found first(List<Whole> peers) {
    List<String> refusal = new ArrayList<>();
    Candidate weak = null;
    for (Whole peer : peers) {
      for (Settings plan : plans(peer)) {
        Transfer.Outcome outcome = judged(peer, plan);
        Optional<Candidate> found =
            outcome.verdict().givesNumber()
                ? aim(peer).with(plan).map(reached -> new Candidate(peer, outcome, reached))
                : Optional.empty();
        if (found.isPresent() && outcome.verdict() == Verdict.START_OF_GRID) {
          return new Found(Optional.of(start(found.get())), List.of());
        }
        if (found.isPresent() && weak == null) {
          weak = found.get();
        }
        if (refusal.isEmpty() && found.isEmpty()) {
          refusal.addAll(outcome.reasons());
        }
      }
    }
    return weak == null
        ? new Found(Optional.empty(), List.copyOf(refusal))
        : new Found(Optional.of(start(weak)), List.of());
  }

  private Aim aim(Whole peer) {
    return new Aim(mine, process, target.dose().orElse(peer.dose()));
  }

  /** With the peer's share of power; on an unlike machine the same watts are nearer to it. */
  private List<Settings> plans(Whole peer) {
    Aim aim = aim(peer);
    Settings used = peer.settings();
    Double watts = Dose.derive(peer.laser(), process, used).averagePowerW();
    List<Settings> plans = new ArrayList<>();
    aim.plan(used).ifPresent(plans::add);
    aim.plan(used.atWatts(watts)).filter(plan -> !plans.contains(plan)).ifPresent(plans::add);
    return plans;
  }

  private Transfer.Outcome judged(Whole peer, Settings plan) {
    return Transfer.judge(
        new Transfer.Question(peer.laser(), peer.settings(), mine, plan, process, true, true));
  }

  private Start start(Candidate found) {
    List<Why> why = new ArrayList<>(target.why());
    if (found.outcome().verdict() == Verdict.WEAK) {
      why.addAll(machines(found));
    }
    return new Start(
        found.reached().settings(),
        found.reached().dose(),
        target.basis(),
        found.from(),
        List.copyOf(why),
        found.reached().lowered());
  }

  private List<Why> machines(Candidate found) {
    List<Why> why = new ArrayList<>();
    Laser theirs = found.from().laser();
    if (mine.beamDiameterUm() == null) {
      why.add(Why.MY_SPOT);
    } else if (theirs.beamDiameterUm() == null) {
      why.add(Why.THEIR_SPOT);
    }
    Double before = Dose.derive(theirs, process, found.from().settings()).averagePowerW();
    Double after = Dose.derive(mine, process, found.reached().settings()).averagePowerW();
    Comparison power = new Comparison("", "W", before, after);
    Comparison speed =
        new Comparison(
            "", "mm/s", found.from().settings().speedMmS(), found.reached().settings().speedMmS());
    if (!power.within(Transfer.NEAR) || !speed.within(Transfer.NEAR) || why.isEmpty()) {
      why.add(Why.UNLIKE_MACHINE);
    }
    return why;
  }
}
