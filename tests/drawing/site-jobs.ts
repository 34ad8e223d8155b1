import { DRIVE_AS_TYPED } from '../format/drawn-jobs.ts';

/*
 * Two small jobs with heights, falls, digs and what stands and lies on a site.
 */

export const SITE_JOBS: Readonly<Record<string, string>> = {
  'falling terrace': `job "Test terrace" {
  rules    north-america
  show     feet-and-inches
  currency USD
  dig      by hand
  access   3 ft wide, barrow run 85 ft
  note     "Shut-off is in the garage."
}
unit slab-16 { size 15 7/8 x 15 7/8 x 2 in, weight 42 lb, set by hand }
site {
  soil clay, poorly-drained
  topsoil 5 in
  winters freeze
  benchmark door-sill
}
point A at (0, 0)
point B at (18 ft 6 in, 0)
point C taped 12 ft 7 7/8 in from B, 22 ft 4 1/2 in from A, left of A to B
point D taped 12 ft 8 5/8 in from A, 22 ft 7 3/8 in from B, 18 ft 7 3/4 in from C, left of A to B
point M halfway D to A

heights by laser on 2026-04-18, door-sill reads 31 1/4 in {
  ground   A 34 1/4 in   B 34 1/2 in   C 38 in   D 37 1/4 in
  old-walk A 33 3/4 in   M 34 7/8 in   D 36 7/8 in
}
existing old-walk {
  edge  D to A, offsets into it 0 at D, 3/16 in at 4 ft, 3/8 in at 8 ft, 0 at A
  units 15 7/8 x 15 7/8 in, joints 1/8 in
  joint-line at A
}
area terrace {
  outline A to B to C to D
  traffic foot
  finish  2 1/2 in below door-sill along A to B, falling 1/4 in per ft away from A to B
  paving  slab-16 in running-bond, joints 1/8 in
  start   whole units along A to B, carried on from old-walk
  bed     washed-sand 1 in
  base    crushed-stone 6 in, 6 in past the edging
  edges {
    A to B  meets house-wall, solid masonry
    B to C  meets lawn, edging spiked-strip set after laying
    C to D  meets lawn
    D to A  meets old-walk, flush
  }
}
box valves in terrace {
  rectangle 20 x 14 in, centre 6 ft 2 in along A to B, 3 ft 1 in out
  lid       4 1/4 in below door-sill
  in use, set flush
}
box old-sprinkler in terrace {
  circle    10 in across, centre 12 ft 4 in along A to B, 8 ft out
  lid       5 in below door-sill
  out of use, cut down and bury
}
pipe irrigation in terrace {
  from valves to old-sprinkler
  depth about 10 in, not proven
}
gate side-gate {
  hinge 2 ft along B to C, leaf 3 ft 2 in towards C, opens 95 degrees into terrace
  underside 3 1/4 in below door-sill
  clearance 1/2 in
}
level-sheet { every 6 ft, printed in inches, string 6 in above the finish, offset-points 2 ft outside the dig }
log {
  2026-04-25 delivered crushed-stone 8 1/2 short ton
  2026-05-02 soft-spot 3 x 4 ft, centre 14 ft along A to B, 9 ft out, 4 in deeper, filled crushed-stone
  2026-05-09 measured base at C 8 1/2 in below door-sill, at D 8 7/8 in below door-sill
  2026-05-09 done base of terrace, done dig of terrace along A to B
}
section long A to C
section side D to B
`,
  'crowded yard': `job "Crowded yard" { rules britain, show metric }
unit block { size 200 x 100 x 60 mm, colour red }
site { soil clay, topsoil 0.15 m, benchmark sill
  break-line P to Q
}
point A at (0, 0) m
point B at (6, 0) m
point C at (6, 4) m
point D at (0, 4) m
point E at (12, 4) m
point F at (12, 0) m
point P at (2, -0.5) m
point Q at (3, 4.5) m
heights by laser on 2026-02-20, sill reads 1.0 m {
  ground A 1.10 B 1.12 C 1.2 D 1.25 P 1.05 Q 1.15 F 1.2 E 1.2 m
}
existing slabs { outline rectangle 1.5 x 1 m, corner (0.3, 2.4) m, thickness 100 mm, broken out }
area yard {
  outline A to B to C to D
  traffic foot
  finish A 60 mm below sill B 60 mm below sill C 120 mm below sill D 140 mm below sill, folded along A to C
  paving block in running-bond, joints 3 mm
  base type-1 150 mm
  sub-base type-1 150 mm
  bed sharp-sand 30 mm
  edges {
    A to B meets house-wall
    B to C meets lane, flush
    the rest meets lawn, edging concrete-edging
  }
}
material concrete-edging { role edging, width 50 mm }
line spine B to F
area lane {
  outline B to F to E to C
  traffic foot
  finish along spine, 60 mm below sill at 0 m, 100 mm below sill at 6 m, camber 1:40
  base type-1 150 mm
  bed sharp-sand 30 mm
  edges {
    C to B meets yard, flush
    the rest meets lawn, edging concrete-edging
  }
}
box valve in yard {
  rectangle 600 x 400 mm, centre 2 m along C to D, 1 m out
  lid 80 mm below sill
  in use, set flush
}
pit maple in yard {
  circle 0.8 m across, centre (4.8, 1.4) m
  no-dig 2 m across
}
door kitchen {
  opening 1 to 1.9 m along A to B
  sill level with sill
}
drain sump in yard {
  gully circle 300 mm across, centre (2, 2) m
  grate 90 mm below sill
  outlet at D to soakaway
}
drain strip in yard {
  channel along B to C, 130 mm wide
  grate 90 mm below sill
}
pipe water { from A to C
  depth 600 mm, proven
  carries water }
pipe cable { from D to F
  depth about 450 mm, not proven
  carries power }
line path A to C
route bins along path
section x A to C
section y D to F
`,
  'twisted drive': DRIVE_AS_TYPED,
  'raised path': `job "Raised path" { rules britain, show metric }
unit block { size 200 x 100 x 60 mm }
site { soil clay, topsoil 0.05 m, benchmark sill 10.000 m }
point P at (0, 0)
point Q at (6, 0) m
point R at (9, 5) m
point S at (9, 9) m
point E1 at (8.4, 9) m
point E2 at (9.6, 9) m
line spine P to Q to R to S, rounded 2 m at Q and R
existing footway { kind footway }
heights {
  ground P 9.95 m  Q 9.60 m  R 9.65 m  S 9.95 m  E1 9.95 m
  footway P 9.985 m
}
drain end-channel {
  channel along E1 to E2, 130 mm wide, 120 mm deep, on concrete 100 mm below and both sides
  grate 9.950 m at E1 and E2
  outlet at E2 to soakaway
}
area path {
  outline along spine, 1.2 m wide
  traffic foot
  finish  along spine, 9.985 m at 0 m, 10.080 m at 4 m, 9.955 m at 12 m, camber 1:60
  paving  block in stack-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  edges {
    start       meets footway, flush
    end         meets end-channel
    left, right meets lawn, edging spiked-strip
  }
}
section both P to R to S
`
};
