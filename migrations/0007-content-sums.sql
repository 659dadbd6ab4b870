-- What the rows of a job sum up to, table by table, kept by the program with every change: a letter that turned into another one on the
-- disk is noticed when the book is opened. A table with rows of a job needs nothing for it but a column job_key.
CREATE TABLE content_sums (
  table_name TEXT NOT NULL,
  job_key TEXT NOT NULL,
  total INTEGER NOT NULL,
  PRIMARY KEY (table_name, job_key)
) STRICT, WITHOUT ROWID;
