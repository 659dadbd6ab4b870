-- A job sheet says how to reach the client and how to get in, which paper the job is printed on, whether it is a demonstration or put away.
UPDATE jobs SET header = json_set(
  header,
  '$.phones', '', '$.mail', '', '$.access', '',
  '$.paper', CASE header ->> '$.unitSystem' WHEN 'metric' THEN 'a4' ELSE 'letter' END,
  '$.isDemonstration', json(CASE WHEN header ->> '$.id' LIKE 'demo-%' THEN 'true' ELSE 'false' END),
  '$.isPutAway', json('false'),
  '$.proposalNumber', NULL
) WHERE json_type(header, '$.phones') IS NULL;

-- Who the shop is and what it sells under; the job with the key "shop" is the shop sheet itself, every other one has a copy.
ALTER TABLE jobs ADD COLUMN business TEXT NOT NULL CHECK (json_valid(business)) DEFAULT '{"name":"","address":"","phone":"","mail":"","license":"","insurance":"","leadCertificate":{"number":"","expiresOn":null},"proposal":{"validDays":30,"colorsDaysBefore":7,"prices":"byRoom","hiddenHourCents":0},"texts":{"notIncluded":"","whoMoves":"","hiddenConditions":"","warranty":"","terms":""},"paymentSteps":[],"nextNumbers":{"proposal":1,"changeOrder":1,"invoice":1},"assumed":[]}';
