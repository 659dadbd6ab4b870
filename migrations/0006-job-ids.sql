-- A job has an id of its own, by which the events of its calendars are known. One that was made before gets the key it has in this book.
UPDATE jobs SET header = json_set(header, '$.id', job_key) WHERE json_type(header, '$.id') IS NULL;
