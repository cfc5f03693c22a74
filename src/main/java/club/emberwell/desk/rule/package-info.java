/**
 * Rules that look at new entries: {@link club.emberwell.desk.rule.Rules} sets them and tells what
 * they noticed, {@link club.emberwell.desk.rule.RuleRunner} holds entries against them.
 */
package club.emberwell.desk.rule;
