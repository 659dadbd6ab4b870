-- What was said of holds: who sees to one, when it is expected, when and by whom it was cleared. A hold follows from what was found and is
-- named by its key; there is no table to refer to.
CREATE TABLE holds (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;
