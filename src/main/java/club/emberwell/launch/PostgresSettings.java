package club.emberwell.launch;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** How the built-in database is set up: small memory, nothing lost on a crash, loopback only. */
final class PostgresSettings {
  private PostgresSettings() {}

  /** For a club's data. */
  static Map<String, String> durable() {
    Map<String, String> settings = new LinkedHashMap<>();
    settings.put("listen_addresses", "127.0.0.1");
    settings.put("unix_socket_directories", "");
    settings.put("password_encryption", "scram-sha-256");
    settings.put("fsync", "on");
    settings.put("synchronous_commit", "on");
    settings.put("full_page_writes", "on");
    settings.put("max_connections", "60");
    settings.put("shared_buffers", "64MB");
    settings.put("work_mem", "8MB");
    settings.put("maintenance_work_mem", "64MB");
    settings.put("max_wal_size", "512MB");
    settings.put("max_wal_senders", "0");
    settings.put("wal_level", "minimal");
    settings.put("jit", "off");
    settings.put("timezone", "UTC");
    settings.put("log_timezone", "UTC");
    // an open write transaction would stall the index of every node
    settings.put("idle_in_transaction_session_timeout", "30s");
    return settings;
  }

  /** For tests, whose data may be lost. */
  static Map<String, String> forTests() {
    Map<String, String> settings = durable();
    settings.put("fsync", "off");
    settings.put("synchronous_commit", "off");
    settings.put("full_page_writes", "off");
    settings.put("max_connections", "200");
    return settings;
  }

  /** As arguments of {@code postgres}. */
  static List<String> asArguments(Map<String, String> settings) {
    return settings.entrySet().stream()
        .flatMap(e -> List.of("-c", e.getKey() + "=" + e.getValue()).stream())
        .collect(Collectors.toList());
  }
}
