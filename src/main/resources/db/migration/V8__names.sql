-- Takes a name out of the texts of a document. Keys stay, and so does a value that is nothing but
-- the name: it may be a code that happens to be spelled so.
create function without_name(doc jsonb, pattern text, name text, instead text)
  returns jsonb language plpgsql immutable as $$
declare
  said text;
begin
  case jsonb_typeof(doc)
    when 'string' then
      said := doc #>> '{}';
      return case when lower(said) = lower(name) then doc
        else to_jsonb(regexp_replace(said, pattern, instead, 'gi')) end;
    when 'array' then
      return (select coalesce(jsonb_agg(without_name(e, pattern, name, instead) order by n), '[]')
        from jsonb_array_elements(doc) with ordinality as x (e, n));
    when 'object' then
      return (select coalesce(jsonb_object_agg(k, without_name(v, pattern, name, instead)), '{}')
        from jsonb_each(doc) as x (k, v));
    else
      return doc;
  end case;
end
$$;
