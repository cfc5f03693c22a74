package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * A member's recipes with every revision and the links to their job cards. They are nobody else's,
 * so they go whatever is chosen.
 */
@Priority(470)
@ApplicationScoped
class RecipeData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "recipes.json",
            """
            select e.*, r.*,
              (select jsonb_agg(to_jsonb(p) - 'recipe_id' order by p.report_id) from recipe_report p
                where p.recipe_id = e.id) as reports,
              (select jsonb_agg(to_jsonb(l) - 'recipe_id' - 'secret_hash'
                  order by l.created_at, l.id)
                from recipe_link l where l.recipe_id = e.id) as links,
              (select jsonb_agg(to_jsonb(v) - 'entry_id' order by v.version) from entry_revision v
                where v.entry_id = e.id) as revisions
            from recipe r join entry e using (id, kind)
            where e.member_id = :member
            order by e.number"""));
  }

  @Override
  public String erasing(Choice choice) {
    return """
    delete from entry_revision where entry_id in (
      select id from entry where kind = 'recipe' and member_id = :member);
    delete from entry where kind = 'recipe' and member_id = :member""";
  }
}
