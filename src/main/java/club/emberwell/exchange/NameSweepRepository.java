package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Finds every column with text by itself, so that no table of a later feature is forgotten. */
@ApplicationScoped
class NameSweepRepository {
  private static final String COLUMNS =
      """
      select cast(c.table_name as text), cast(c.column_name as text),
        case when c.data_type = 'ARRAY' then 'array' when c.data_type = 'jsonb' then 'json'
          else 'text' end
      from information_schema.columns c
      join information_schema.tables t using (table_schema, table_name)
      where c.table_schema = current_schema() and t.table_type = 'BASE TABLE'
        and (c.data_type in ('text', 'character varying', 'jsonb')
          or (c.data_type = 'ARRAY' and c.udt_name in ('_text', '_varchar')))
        and c.is_generated = 'NEVER'
        and c.table_name not in ('flyway_schema_history', 'erasure')
      order by 1, 2
      """;

  /** What entries say, which every node's index holds: whoever follows changes looks again. */
  private static final Set<String> INDEXED = Set.of("report", "talk");

  private final EntityManager db;

  NameSweepRepository(EntityManager db) {
    this.db = db;
  }

  private record Column(String name, String kind) {}

  /** Whether the vocabulary knows the word, alone or in a longer term. */
  boolean isVocabulary(String word) {
    return !db.createNativeQuery(
            """
            select 1 from (select label as text from term union all select text from synonym) w
             where lower(w.text) ~ :pattern limit 1""")
        .setParameter("pattern", "\\m%s\\M".formatted(NameSweep.escaped(word)))
        .getResultList()
        .isEmpty();
  }

  /**
   * Replaces what a pattern finds in every text; one pass over each table.
   *
   * @param pattern a regular expression of the database, whatever the case
   * @param name a value that is nothing but this stays: it may be a code spelled so
   */
  void replace(String pattern, String name, String instead) {
    tables()
        .forEach(
            (table, columns) -> {
              String touched = joined(columns, " or ", NameSweepRepository::found);
              if (INDEXED.contains(table)) {
                execute(
                    """
                    update entry set updated_at = updated_at
                     where id in (select id from %s where %s)"""
                        .formatted(quoted(table), touched),
                    pattern,
                    null,
                    null);
              }
              execute(
                  "update %s set %s where %s"
                      .formatted(
                          quoted(table),
                          joined(columns, ", ", NameSweepRepository::assignment),
                          touched),
                  pattern,
                  name,
                  instead);
            });
  }

  private static String joined(
      List<Column> columns, String between, Function<Column, String> part) {
    return columns.stream().map(part).collect(Collectors.joining(between));
  }

  private Map<String, List<Column>> tables() {
    Map<String, List<Column>> tables = new LinkedHashMap<>();
    for (Object each : db.createNativeQuery(COLUMNS, Tuple.class).getResultList()) {
      Tuple row = (Tuple) each;
      tables
          .computeIfAbsent((String) row.get(0), table -> new ArrayList<>())
          .add(new Column((String) row.get(1), (String) row.get(2)));
    }
    return tables;
  }

  private static String assignment(Column column) {
    String without =
        switch (column.kind()) {
          case "json" -> "without_name(%s, :pattern, :name, :instead)";
          case "array" ->
              """
              (select array_agg(case when lower(e) = lower(:name) then e
                  else regexp_replace(e, :pattern, :instead, 'gi') end)
                 from unnest(%s) e)""";
          default ->
              """
              case when lower(%1$s) = lower(:name) then %1$s
                else regexp_replace(%1$s, :pattern, :instead, 'gi') end""";
        };
    String name = quoted(column.name());
    return "%1$s = case when %2$s then %3$s else %1$s end"
        .formatted(name, found(column), without.formatted(name));
  }

  private static String found(Column column) {
    return "cast(%s as text) ~* :pattern".formatted(quoted(column.name()));
  }

  private void execute(String sql, String pattern, String name, String instead) {
    var query = db.createNativeQuery(sql).setParameter("pattern", pattern);
    if (name != null) {
      query.setParameter("name", name).setParameter("instead", instead);
    }
    query.executeUpdate();
  }

  private static String quoted(String identifier) {
    return "\"%s\"".formatted(identifier.replace("\"", "\"\""));
  }
}
