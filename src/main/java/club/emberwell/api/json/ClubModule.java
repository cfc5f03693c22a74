package club.emberwell.api.json;

import club.emberwell.quantity.UtcTime;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.Module;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.time.Instant;

/** What Jackson needs to know of the program's types, which know nothing of Jackson. */
public final class ClubModule extends SimpleModule {
  private static final long serialVersionUID = 1L;

  /** Every time in the same way. */
  private static final class Moments extends StdSerializer<Instant> {
    private static final long serialVersionUID = 1L;

    Moments() {
      super(Instant.class);
    }

    @Override
    public void serialize(Instant moment, JsonGenerator out, SerializerProvider known)
        throws IOException {
      out.writeString(UtcTime.of(moment));
    }
  }

  public ClubModule() {
    super("club");
    addSerializer(Instant.class, new Moments());
    addDeserializer(WrittenQuantity.class, new WrittenQuantityReader());
    setDeserializerModifier(new StrictGroups.Modifier());
  }

  @Override
  public void setupModule(SetupContext context) {
    super.setupModule(context);
    context.insertAnnotationIntrospector(new Codes());
  }

  /** Teaches the API's mapper, after all others: the last to say how a time is written is heard. */
  @Singleton
  static class Customizer implements ObjectMapperCustomizer {
    @Override
    public int priority() {
      return MINIMUM_PRIORITY;
    }

    @Override
    public void customize(ObjectMapper json) {
      Module module = new ClubModule();
      json.registerModule(module);
    }
  }
}
