-- Pins name the pass they hold. Their keys stay as they are: a plan looks up the pass that has the step where an older pin names one.
UPDATE pins SET body = json_remove(json_set(body, '$.passKey', body ->> '$.taskKey'), '$.taskKey')
WHERE json_type(body, '$.passKey') IS NULL;
-- What the plan of a job is looked for; until now there was one kind.
UPDATE jobs SET header = json_set(header, '$.planFor', 'balanced') WHERE json_type(header, '$.planFor') IS NULL;
