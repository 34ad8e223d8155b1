/** The smallest job without a finding, for tests that change one thing in it. */
export const PATIO = `job "Small patio" {
  rules britain
}
site { soil common-earth, benchmark step, ground level with step }
unit block { size 200 x 100 x 60 mm }

area patio {
  outline rectangle 3 x 4 m
  traffic foot
  finish  level with step
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
`;
