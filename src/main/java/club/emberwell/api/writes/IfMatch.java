package club.emberwell.api.writes;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A change of what the client read in the version that If-Match names; of another one, 412. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface IfMatch {
  /** Whether it is refused with 428 where the header is missing. */
  boolean required() default true;
}
