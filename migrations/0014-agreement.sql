-- Work the client may choose, as changes to the job. Scopes in it may outlive their rooms; then the option says so.
CREATE TABLE options (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;

-- What happened between the shop and its client: quoted, accepted, changed, invoiced, paid. Rows are only ever added.
CREATE TABLE dealings (
  job_key TEXT NOT NULL REFERENCES jobs (job_key) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (job_key, id),
  CHECK (id IS body ->> '$.id')
) STRICT;
