-- Rooms that are worked with another room, and how steps are gathered into passes. A room stays as its use and doors suggest, a job gathers as
-- shops usually do, until somebody says otherwise.
UPDATE rooms SET body = json_set(body, '$.workedWith', json('null')) WHERE json_type(body, '$.workedWith') IS NULL;
UPDATE jobs SET house_rules = json_set(house_rules, '$.passes', json('{"primed":"together","repairs":"together","largestHours":6.5}'))
WHERE json_type(house_rules, '$.passes') IS NULL;
