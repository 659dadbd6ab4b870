-- How far a job may come out from what was counted: shop assumptions, until they are worked out from finished jobs.
UPDATE jobs SET house_rules = json_set(
  house_rules,
  '$.spreads',
  json('{"pacePercent":8,"ratePercent":20,"materialPercent":8,"findingChancePercent":25,"findingSizePercent":40,"coatAgainPercent":3,"restsOn":0}')
) WHERE json_type(house_rules, '$.spreads') IS NULL;

-- Money that was spent for the job.
CREATE TABLE receipts (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE cans_used (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  product_id TEXT GENERATED ALWAYS AS (body ->> '$.productId') STORED,
  colour_id TEXT GENERATED ALWAYS AS (body ->> '$.colourId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, product_id) REFERENCES products (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, colour_id) REFERENCES colours (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX cans_used_by_product ON cans_used (job_key, product_id);
CREATE INDEX cans_used_by_colour ON cans_used (job_key, colour_id);

-- What finished jobs of the shop say; on the shop sheet only.
CREATE TABLE own_jobs (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;
