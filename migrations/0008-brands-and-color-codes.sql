-- The brand of a product and the code a store tints a color by. Nobody could say them before, so both are empty.
UPDATE products SET body = json_set(body, '$.brand', '') WHERE json_type(body, '$.brand') IS NULL;
UPDATE colours SET body = json_set(body, '$.code', '') WHERE json_type(body, '$.code') IS NULL;
