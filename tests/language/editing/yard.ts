/** Files of a made-up folder: a job in two parts, a shared file, and another job that uses the shared file too. */
export const YARD: Readonly<Record<string, string>> = {
  'yard.paving': `job "Pear tree yard" { rules britain }
use "shared.paving"
use "walk.paving"
let depth = 150 mm
area yard {
  outline A to door bowed 3 m out to C
  traffic foot
  finish level with step
  paving slab in running-bond, joints 3 mm
  base stone depth
  edges {
    A to door meets house-wall
    C to A meets hedge, edging spiked-strip set before laying
    the rest meets front-walk, flush
  }
}
box lid in yard { rectangle 20 x 14 in, centre (3, 2) m }
`,
  'shared.paving': `// Shared by all jobs of this yard.
site { soil clay, benchmark step, ground level with step }
point A at (0, 0)
point door at (6 m, 0)
point C at (6, 4) m
unit slab { size 450 x 450 x 50 mm }
material stone { role base, compacted 2.2 t/m3, loose 1.76 t/m3 }
existing hedge { kind lawn }
`,
  'walk.paving': `use "shared.paving"
area front-walk {
  outline rectangle 2 x 1 m, corner (6, 0) m
  traffic foot
  finish as yard
  paving slab in stack-bond
  base stone 100 mm
  edges { left meets yard, flush
    near, far meets lawn, edging spiked-strip
    right meets lawn }
}
`,
  'other.paving': `job "Another yard" { rules britain }
use "shared.paving"
area court {
  outline A to door to C
  paving slab in running-bond
  base stone 150 mm
  edges { all round meets hedge }
}
`
};

/** The folder with the cursor put into one of its files, at a place written with ‸. */
export function yardWith(file: string, words: string): Record<string, string> {
  const plain = words.replace('‸', '');
  const text = YARD[file]!;
  if (text.split(plain).length !== 2) throw new Error(`${file} does not hold once: ${plain}`);
  return { ...YARD, [file]: text.replace(plain, words) };
}
