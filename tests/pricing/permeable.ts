/** A small drive and what it would be if the water went down between the blocks: all invented. */
export const DRIVE = `job "Drive" {
  rules britain, show metric, currency GBP
  crew 2, Monday to Friday, 8 h a day
  labour 24 GBP per hour
  margin 18 %
  tax 20 %
}
site { soil clay, poorly-drained, topsoil 0.15 m, winters freeze, benchmark floor 10.000 m, planning "To an own soakaway." }
point G1 at (0, 0) m
point G2 at (5.2, 0) m
point R1 at (0, 8) m
point R2 at (5.2, 8) m
heights { ground G1 20 mm above floor G2 20 mm above floor R1 300 mm above floor R2 300 mm above floor }
unit block-red { size 200 x 100 x 60 mm }
material grit-2-6 { role bed, joint-filler, grading grit, compacted 1.6 t/m3, loose 1.45 t/m3 }
material open-graded-stone { role base, grading open, compacted 1.7 t/m3, loose 1.55 t/m3 }
price type-1 { loose for 30 GBP per tonne, in steps of 1 tonne }
price open-graded-stone { loose for 42 GBP per tonne, in steps of 1 tonne }
price block-red { piece for 0.55 GBP }
drain garage-channel {
  channel along G1 to G2, 130 mm wide
  grate 9.982 m at G1 and G2
  outlet at G2 to soakaway
}
area drive {
  outline G1 to G2 to R2 to R1
  traffic cars
  finish G1 9.985 G2 9.985 R2 10.22 R1 10.22 m
  paving block-red in herringbone-90, joints 3 mm
  bed sharp-sand 30 mm
  base type-1 250 mm
  joints filled with kiln-dried-sand
  edges {
    G1 to G2 meets garage-channel
    the rest meets garden-wall
  }
}
`;

export const PERMEABLE = `variant permeable {
  area drive {
    bed    grit-2-6 50 mm
    base   open-graded-stone 300 mm
    joints filled with grit-2-6
    geotextile
  }
  drain garage-channel none
}
`;
