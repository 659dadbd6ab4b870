-- Safety rules could be switched off without a written reason, and their numbers made weaker than the published limits.
-- Each number that is weaker goes back to its limit, each rule that is off without a reason goes on again, and `raised` says so.

-- One line for each number that a published limit holds: `sign` is 1 where larger is stricter, -1 where smaller is.
CREATE TEMPORARY TABLE limits (place INTEGER PRIMARY KEY, rule TEXT, name TEXT, published REAL, sign INTEGER, says TEXT, source TEXT);
INSERT INTO limits (rule, name, published, sign, says, source) VALUES
  ('lead-safe', 'builtBefore', 1978, 1, 'the year before which a house is taken to hold lead paint', '40 CFR 745.83'),
  ('lead-safe', 'interiorSquareFeet', 6, -1, 'the square feet that count as minor repair in a room', '40 CFR 745.83'),
  ('lead-safe', 'earlierSquareFeet', 0, 1, 'the square feet disturbed in each room by jobs before this one', '40 CFR 745.83 (30 days: memory)'),
  ('asbestos-suspicion', 'builtBefore', 1980, 1, 'the year before which texture and compound may hold asbestos', 'US EPA public text; 16 CFR 1304 (1977, memory) and old stock used up after it');

CREATE TEMPORARY TABLE faults AS
SELECT rules.job_key, rules.id, limits.place, limits.name, limits.published,
  printf('%s stood at %g and is %g again, the published limit (%s)', limits.says, rules.body -> ('$.numbers.' || limits.name), limits.published, limits.source) AS said
FROM rules JOIN limits ON limits.rule = rules.id
WHERE json_type(rules.body, '$.numbers.' || limits.name) IN ('integer', 'real')
  AND (json_extract(rules.body, '$.numbers.' || limits.name) - limits.published) * limits.sign < 0;

INSERT INTO faults
SELECT job_key, id, 1000, NULL, NULL, 'it was switched off without a written reason and is on again'
FROM rules
WHERE id IN ('lead-safe', 'asbestos-suspicion') AND json_type(body, '$.on') = 'false' AND json_type(body, '$.leftOut') IS NULL;

UPDATE rules SET body = json_set(body, '$.numbers.builtBefore',
  (SELECT CAST(published AS INTEGER) FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id AND name = 'builtBefore'))
WHERE EXISTS (SELECT 1 FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id AND name = 'builtBefore');
UPDATE rules SET body = json_set(body, '$.numbers.interiorSquareFeet', 6)
WHERE EXISTS (SELECT 1 FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id AND name = 'interiorSquareFeet');
UPDATE rules SET body = json_set(body, '$.numbers.earlierSquareFeet', 0)
WHERE EXISTS (SELECT 1 FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id AND name = 'earlierSquareFeet');
UPDATE rules SET body = json_set(body, '$.on', json('true'))
WHERE EXISTS (SELECT 1 FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id AND name IS NULL);
UPDATE rules SET body = json_set(body, '$.raised', 'Put right when this job was opened: ' ||
  (SELECT group_concat(said, '; ' ORDER BY place) FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id) || '.')
WHERE EXISTS (SELECT 1 FROM faults WHERE faults.job_key = rules.job_key AND faults.id = rules.id);

DROP TABLE faults;
DROP TABLE limits;
