/** 8.2 short ton of stone and loads of 8: eight loads' worth and a few bags cost less than a second load. */
export const COUPLED = `job "Two loads or one" { currency USD }
unit slab { size 12 x 12 x 2 in }
material stone { role bed, compacted 100 lb per cu ft, loose 100 lb per cu ft }
supplier pit { delivery 65 USD a load, load 8 short ton }
price stone from pit { loose for 38 USD per short ton, in steps of 1/2 short ton }
price stone { bag of 50 lb for 5 USD }
area bed {
  outline rectangle 41 x 48 ft
  traffic foot
  paving  slab in stack-bond, joints 0
  bed     stone 1 in
  edges { the rest meets house-wall }
}
`;
