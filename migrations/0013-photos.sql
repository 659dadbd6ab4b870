-- Pictures lie in the book once, known by the SHA-256 of their bytes; jobs and papers refer to that. What nothing refers to any more is taken
-- away when the book is opened, because until then undo may bring a reference back.
CREATE TABLE pictures (
  hash TEXT NOT NULL PRIMARY KEY CHECK (length(hash) = 64),
  media_type TEXT NOT NULL,
  -- ISO instant, UTC.
  kept_at TEXT NOT NULL,
  byte_count INTEGER NOT NULL CHECK (byte_count = length(bytes)),
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE photos (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT GENERATED ALWAYS AS (body ->> '$.of.roomId') STORED,
  condition_id TEXT GENERATED ALWAYS AS (body ->> '$.of.conditionId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, condition_id) REFERENCES conditions (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX photos_by_room ON photos (job_key, room_id);
CREATE INDEX photos_by_condition ON photos (job_key, condition_id);
