package club.emberwell.desk;

import club.emberwell.desk.rule.RuleRunner;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/**
 * The rules' first look, which at a server's start only says where to begin; later ones are up to
 * the tests.
 */
@ApplicationScoped
class RulesFromTheStart {
  void begin(@Observes StartupEvent started, RuleRunner runner) {
    runner.some();
  }
}
