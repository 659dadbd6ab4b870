-- One book holds many jobs. Every record is kept as JSON in the form of the job file (lengths in millimetres), checked by the
-- program before it is written; the columns that tie records together are derived from it, so that the two cannot differ.
-- References are checked when a transaction ends, so that one edit may write its records in any order.

PRAGMA application_id = 0x436F6174; -- "Coat"

CREATE TABLE jobs (
  job_key TEXT NOT NULL PRIMARY KEY,
  header TEXT NOT NULL CHECK (json_valid(header)),
  house_rules TEXT NOT NULL CHECK (json_valid(house_rules)),
  -- Rises by one with every stored edit.
  revision INTEGER NOT NULL CHECK (revision >= 1),
  -- ISO instant, UTC.
  edited_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE storeys (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE rooms (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  storey_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.storeyId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, storey_id) REFERENCES storeys (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX rooms_by_storey ON rooms (job_key, storey_id);

-- An opening between two rooms is one record with two sides; far_room_id is null where it leads outside or nowhere.
CREATE TABLE openings (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.roomId') STORED,
  far_room_id TEXT GENERATED ALWAYS AS (body ->> '$.far.roomId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, far_room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX openings_by_room ON openings (job_key, room_id);
CREATE INDEX openings_by_far_room ON openings (job_key, far_room_id);

CREATE TABLE ceiling_openings (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.roomId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX ceiling_openings_by_room ON ceiling_openings (job_key, room_id);

CREATE TABLE trim_runs (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.roomId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX trim_runs_by_room ON trim_runs (job_key, room_id);

CREATE TABLE built_items (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.roomId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX built_items_by_room ON built_items (job_key, room_id);

CREATE TABLE kept_items (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.roomId') STORED,
  opening_id TEXT GENERATED ALWAYS AS (body ->> '$.on.openingId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, opening_id) REFERENCES openings (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX kept_items_by_room ON kept_items (job_key, room_id);
CREATE INDEX kept_items_by_opening ON kept_items (job_key, opening_id);

-- What is there now, what was found, and what it shall become may be said of the house, of a room, or of one surface.
CREATE TABLE existing (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT GENERATED ALWAYS AS (coalesce(body ->> '$.scope.roomId', body ->> '$.scope.surface.roomId')) STORED,
  opening_id TEXT GENERATED ALWAYS AS (body ->> '$.scope.surface.openingId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, opening_id) REFERENCES openings (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX existing_by_room ON existing (job_key, room_id);
CREATE INDEX existing_by_opening ON existing (job_key, opening_id);

CREATE TABLE conditions (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT GENERATED ALWAYS AS (coalesce(body ->> '$.on.roomId', body ->> '$.on.surface.roomId')) STORED,
  opening_id TEXT GENERATED ALWAYS AS (body ->> '$.on.surface.openingId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, opening_id) REFERENCES openings (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX conditions_by_room ON conditions (job_key, room_id);
CREATE INDEX conditions_by_opening ON conditions (job_key, opening_id);

CREATE TABLE colours (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE finishes (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  room_id TEXT GENERATED ALWAYS AS (coalesce(body ->> '$.scope.roomId', body ->> '$.scope.surface.roomId')) STORED,
  opening_id TEXT GENERATED ALWAYS AS (body ->> '$.scope.surface.openingId') STORED,
  colour_id TEXT GENERATED ALWAYS AS (body ->> '$.colourId') STORED,
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id'),
  FOREIGN KEY (job_key, room_id) REFERENCES rooms (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, opening_id) REFERENCES openings (job_key, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (job_key, colour_id) REFERENCES colours (job_key, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX finishes_by_room ON finishes (job_key, room_id);
CREATE INDEX finishes_by_opening ON finishes (job_key, opening_id);
CREATE INDEX finishes_by_colour ON finishes (job_key, colour_id);

-- The shop's own lists, copied into the job when it starts, so that an old job never changes by itself.
CREATE TABLE products (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE crew (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE rates (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE rules (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

-- Pins and marks name steps and tasks by keys that follow from the records; there is no table to refer to.
CREATE TABLE pins (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

CREATE TABLE marks (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

-- Frozen copies of what was given to somebody.
CREATE TABLE issued (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;
