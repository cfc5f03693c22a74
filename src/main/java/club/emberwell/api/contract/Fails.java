package club.emberwell.api.contract;

import club.emberwell.access.problem.ProblemKind;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Problems that come with an operation and do not follow from its other traits. On a class: those
 * of its operations on one thing, whose path has an id.
 */
@Target({ElementType.METHOD, ElementType.TYPE})
@Retention(RetentionPolicy.RUNTIME)
public @interface Fails {
  ProblemKind[] value();
}
