package club.emberwell.api.search;

import jakarta.ws.rs.NameBinding;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * An operation that is answered from the index: its answer has an ETag by which {@link
 * IndexAnswers} knows, before anything is searched, that the client holds it already.
 */
@NameBinding
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface FromIndex {}
