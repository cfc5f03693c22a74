-- Scopes count from now on, and acting as a moderator or owner has one of its own; tokens that were
-- made before keep what they could do.
update api_token t set scopes = 'read write moderate'
from member m where m.id = t.member_id and m.role in ('moderator', 'owner');
