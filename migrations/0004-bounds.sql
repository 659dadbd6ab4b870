-- Prices below nothing, cans of a billionth of a gallon and rates of years for a foot were accepted once. They go to the nearest value
-- that is accepted now; what a product or a rate said before stands behind its source.

UPDATE products SET body = json_set(body,
  '$.source', substr(body ->> '$.source' || ' (before: ' || (body ->> '$.volumeSolidsPercent') || ' % solids, ' || (body ->> '$.dryFilmMils') || ' mils, cans '
    || (SELECT group_concat(printf('%g gal at %d cents', each.value ->> '$.gallons', each.value ->> '$.priceCents'), ', ') FROM json_each(body, '$.containers') AS each) || ')', 1, 4000),
  '$.volumeSolidsPercent', max(1, body ->> '$.volumeSolidsPercent'),
  '$.dryFilmMils', max(0.01, body ->> '$.dryFilmMils'),
  '$.containers', json((SELECT json_group_array(json_set(each.value,
      '$.gallons', max(0.005, each.value ->> '$.gallons'),
      '$.priceCents', min(1000000000, max(0, each.value ->> '$.priceCents')))) FROM json_each(body, '$.containers') AS each)))
WHERE body ->> '$.volumeSolidsPercent' < 1 OR body ->> '$.dryFilmMils' < 0.01
  OR EXISTS (SELECT 1 FROM json_each(body, '$.containers') AS each
    WHERE each.value ->> '$.gallons' < 0.005 OR each.value ->> '$.priceCents' NOT BETWEEN 0 AND 1000000000);

UPDATE crew SET body = json_set(body, '$.wageCents', min(1000000000, max(0, body ->> '$.wageCents')))
WHERE body ->> '$.wageCents' NOT BETWEEN 0 AND 1000000000;

UPDATE rates SET body = json_set(body,
  '$.source', substr(body ->> '$.source' || ' (before: ' || (body ->> '$.perHour') || ' an hour)', 1, 4000),
  '$.perHour', 0.02)
WHERE body ->> '$.perHour' < 0.02;

UPDATE jobs SET house_rules = json_set(house_rules, '$.price.sundriesCentsPerHour', min(1000000000, max(0, house_rules ->> '$.price.sundriesCentsPerHour')))
WHERE house_rules ->> '$.price.sundriesCentsPerHour' NOT BETWEEN 0 AND 1000000000;
