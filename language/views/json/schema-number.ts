/** Number of the JSON contract. New keys keep it; a key that changes its meaning raises it. */
export const SCHEMA_NUMBER = 1;
