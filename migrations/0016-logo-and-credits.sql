-- A shop may have a logo; options taken together may cost other than their sum; an invoice may be taken back by another one.
UPDATE jobs SET business = json_set(business, '$.logo', NULL) WHERE json_type(business, '$.logo') IS NULL;
UPDATE dealings SET body = json_set(body, '$.together', json('{"beforeTaxCents":0,"taxCents":0}'))
WHERE body ->> '$.kind' = 'accepted' AND json_type(body, '$.together') IS NULL;
UPDATE dealings SET body = json_set(body, '$.credits', NULL)
WHERE body ->> '$.kind' = 'invoiced' AND json_type(body, '$.credits') IS NULL;
