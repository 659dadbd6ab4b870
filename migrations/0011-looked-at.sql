-- Rooms say which of their pieces were looked at and are sound; of those of before nothing is said.
UPDATE rooms SET body = json_set(body, '$.lookedAt', json('[]')) WHERE json_type(body, '$.lookedAt') IS NULL;
