package club.emberwell.exchange.example;

import club.emberwell.remark.Coded;
import java.util.Locale;

/** Where the example stands. */
public enum ExampleState implements Coded {
  NONE,
  LOADING,
  THERE,
  REMOVING;

  @Override
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }
}
