package club.emberwell.web.bench;

import club.emberwell.member.Actor;
import club.emberwell.member.account.FirstStep;
import club.emberwell.member.account.FirstSteps;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.OwnReports;
import club.emberwell.web.about.StepList;
import club.emberwell.web.about.StepList.Step;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;

/** What somebody does first who just came in. */
@ApplicationScoped
class NewcomerSteps {
  private final FirstSteps steps;
  private final OwnReports reports;

  NewcomerSteps(FirstSteps steps, OwnReports reports) {
    this.steps = steps;
    this.reports = reports;
  }

  /** Null once all is done or the list is put away. */
  StepList of(Actor actor, boolean machine) {
    Set<FirstStep> took = steps.of(actor);
    if (took.contains(FirstStep.PUT_AWAY)) {
      return null;
    }
    boolean units =
        took.contains(FirstStep.UNITS)
            || !actor.units().toMap().isEmpty()
            || actor.units().style() != NumberStyle.ANY;
    StepList list =
        new StepList(
            List.of(
                new Step(
                    "/bench/machines/new",
                    "Save your machine",
                    "Then searches show results of similar lasers first.",
                    machine),
                new Step(
                    "/me#numbers",
                    "Choose your units",
                    "Say how you write numbers, for example mm/min or in/s.",
                    units),
                new Step(
                    "/help/range",
                    "See how to read a range",
                    "One picture, two minutes.",
                    took.contains(FirstStep.RANGE)),
                new Step(
                    "/post",
                    "Post your first result",
                    "Results that were too little or too much help too.",
                    reports.any(actor))),
            "/bench/first-steps");
    return list.isAllDone() ? null : list;
  }

  void putAway(Actor actor) {
    steps.took(actor, FirstStep.PUT_AWAY);
  }
}
