-- Kinds of rooms as the shop finds them; there were none.
UPDATE jobs SET house_rules = json_set(house_rules, '$.roomKinds', json('[]'))
WHERE json_type(house_rules, '$.roomKinds') IS NULL;
