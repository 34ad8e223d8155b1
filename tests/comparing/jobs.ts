/** 12 x 16 ft, in canonical form, with what it costs. */
export const PATIO = `job "Back terrace" {
  rules    north-america
  currency USD
  labour   30 USD per hour
  margin   20 %
}

site {
  soil      sand
  winters   mild
  benchmark sill
  ground    level with sill
}

unit slab-16 { size 16 x 16 x 2 in }

price slab-16 { piece for 3.95 USD }

price crushed-stone { loose for 38 USD per short ton, in steps of 1/2 short ton }

area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish  level with sill
  paving  slab-16 in running-bond
  bed     washed-sand 1 in
  base    crushed-stone 6 in
  edges {
    near      meets house-wall
    the rest  meets lawn, edging spiked-strip
  }
}

area path {
  outline rectangle 3 x 10 ft, corner (20 ft, 0)
  traffic foot
  finish  level with sill
  paving  slab-16 in running-bond
  bed     washed-sand 1 in
  base    crushed-stone 4 in
  edges   { all round  meets lawn, edging spiked-strip }
}
`;

/** One foot longer. */
export const LONGER = PATIO.replace('12 x 16 ft', '12 x 17 ft');

/** The same job, with another layout, another order, and a measure that is put otherwise. */
export const REFORMATTED = PATIO.replace('12 x 16 ft', '144 x 192   in')
  .replace(/(unit .*\n\n)(price .*\n)/, '$2// the usual slab\n$1')
  .replace('  traffic foot\n  finish  level with sill\n', '  finish level with sill\n  traffic foot\n');

/** An error in its last area. */
export const BROKEN = PATIO.replace('crushed-stone 4 in', 'gravle 4 in');

export const OTHER = PATIO.replace('Back terrace', 'Side court').replace('12 x 16 ft', '8 x 8 ft');
