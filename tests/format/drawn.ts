/** One job with everything the language has, as nobody should leave it, and in its canonical form. */
export const UNTIDY = `

  //   A made-up job.
job  "Pear tree yard"{ rules north-america,britain
    show metric, currency   USD // as quoted



  }
use "prices.paving"   // shared
use   "stones.paving"
let  frost=6in
let for-clay =2"   // two more
let depth= ( frost+for-clay )*1 - −0.5in

let low = −  3 mm
site
{

   soil clay,bearing 4%,
   topsoil 5in   // never built on
   winters freeze
   // heights hang from it
   benchmark   door-sill −2in


   ground level   with door-sill

}
point A at(0, 0)
point post at ( 18ft 6in , .5 ft )     // a post
point C at (18' 5-7/16",12' 7 7/8")
point DD at (-2 , 12½) ft

unit slab{ size 16×16 x 2", made of concrete,colour   grey, weight 42lb }
unit block { size 200 x 100 x 60mm, made of clay, colour red, weight 2.7 kg }
material strip { role edging, width 3/4in, spikes every 12 in, base-past 6 in, according-to "The yard's // own sheet." }
material kerb { role edging, size 915x50x150 mm
  concrete 250x100 mm below,50 mm of it under the paving
  haunch 100 x 75 mm behind }
material cloth { role geotextile , roll 12 ft 6 in x 50 ft, lap 18in }
material stone { role base,sub-base, grading open, compacted 140 lb per cu ft, compaction-factor 1.25 }
soil-kind loam { swell 20%, density 1.55 t/m3, drains well, frost-heave likely }
side-kind hedge { ground open,holds nothing }
bond third-bond { offset 1/3 }
bond half { offset 1/2 }
bond drawn {
 course big big  a
    course big big b
  turned 45°
}
bond mixed { random-courses,seed 3 , joints-apart 3in }
existing old-walk    // stays
existing step{kind steps,units 8x4in, joints 1/8in, joint-line at DD}
// The yard itself.
area yard {   // all of it
  outline A to post bowed 3in out
 to C radius 4 m in,   // easy here
   // a wide one

      rounded 1.2 m at C
      and DD
  traffic foot,cars
  finish 2 1/2in below door-sill


  paving slab in third-bond,joints 1/8 in
  bed stone 1in
  base stone depth,6 in past the edging
  sub-base stone frost
  geotextile
  joints filled with stone
  edges {
    A to post   meets house-wall
    post to C to DD meets lawn,edging strip set after laying // the long one
    // what is left
    the rest meets old-walk , flush }
}
area walk { outline walk from (0, 0),north 3 m,east 2m bowed 10cm in,back
  finish as yard
  edges { leg 1,legs 2 to 3 meets yard } }
inset star in yard { circle 1m across, centre (5 , 5)m
paving slab,block in drawn,joints 3 mm from 2 to 5mm
  start whole units along A to post and C to DD,equal cuts,shifted (4 , 0)in }
area seat { outline circle 3.6m across,centre(4.4,12.5)m
  paving block in half
  border block in soldier-course all round,mitred , joints 3mm
  band slab in sailor-course across A to post at 3ft
edges { all round meets lawn , edging strip } }
pit tree in yard { circle radius 1m, centre (3, 3)m }
box lid in yard { rectangle 20x14in,corner ( 1 ft,-2 ft ),turned −14 ° }
// The end.`;

export const CANONICAL = `//   A made-up job.
job "Pear tree yard" {
  rules    north-america, britain
  show     metric
  currency USD                        // as quoted
}

use "prices.paving"                   // shared
use "stones.paving"
let frost    = 6 in
let for-clay = 2"                     // two more
let depth    = (frost + for-clay) * 1 - -0.5 in

let low = -3 mm

site {
  soil      clay, bearing 4 %
  topsoil   5 in                      // never built on
  winters   freeze
  // heights hang from it
  benchmark door-sill -2 in

  ground    level with door-sill
}

point A    at (0, 0)
point post at (18 ft 6 in, .5 ft)     // a post
point C    at (18' 5-7/16", 12' 7 7/8")
point DD   at (-2, 12½) ft

unit slab  { size 16 × 16 x 2", made of concrete, colour grey, weight 42 lb }
unit block { size 200 x 100 x 60 mm, made of clay, colour red, weight 2.7 kg }

material strip {
  role         edging
  width        3/4 in
  spikes       every 12 in
  base-past    6 in
  according-to "The yard's // own sheet."
}

material kerb {
  role     edging
  size     915 x 50 x 150 mm
  concrete 250 x 100 mm below, 50 mm of it under the paving
  haunch   100 x 75 mm behind
}

material cloth { role geotextile, roll 12 ft 6 in x 50 ft, lap 18 in }

material stone {
  role              base, sub-base
  grading           open
  compacted         140 lb per cu ft
  compaction-factor 1.25
}

soil-kind loam { swell 20 %, density 1.55 t/m3, drains well, frost-heave likely }
side-kind hedge { ground open, holds nothing }
bond third-bond { offset 1/3 }
bond half       { offset 1/2 }

bond drawn {
  course big big a
  course big big b
  turned 45°
}

bond mixed { random-courses, seed 3, joints-apart 3 in }
existing old-walk                     // stays
existing step { kind steps, units 8 x 4 in, joints 1/8 in, joint-line at DD }

// The yard itself.
area yard {                           // all of it
  outline  A to post bowed 3 in out
      to C radius 4 m in,             // easy here
      // a wide one
      rounded 1.2 m at C
      and DD
  traffic  foot, cars
  finish   2 1/2 in below door-sill

  paving   slab in third-bond, joints 1/8 in
  bed      stone 1 in
  base     stone depth, 6 in past the edging
  sub-base stone frost
  geotextile
  joints   filled with stone
  edges {
    A to post        meets house-wall
    post to C to DD  meets lawn, edging strip set after laying  // the long one
    // what is left
    the rest         meets old-walk, flush
  }
}

area walk {
  outline walk from (0, 0), north 3 m, east 2 m bowed 10 cm in, back
  finish  as yard
  edges   { leg 1, legs 2 to 3  meets yard }
}

inset star in yard {
  circle 1 m across, centre (5, 5) m
  paving slab, block in drawn, joints 3 mm from 2 to 5 mm
  start  whole units along A to post and C to DD, equal cuts, shifted (4, 0) in
}

area seat {
  outline circle 3.6 m across, centre (4.4, 12.5) m
  paving  block in half
  border  block in soldier-course all round, mitred, joints 3 mm
  band    slab in sailor-course across A to post at 3 ft
  edges   { all round  meets lawn, edging strip }
}

pit tree in yard { circle radius 1 m, centre (3, 3) m }
box lid in yard { rectangle 20 x 14 in, corner (1 ft, -2 ft), turned -14° }
// The end.
`;
