// Which key means what while the plan has the focus.

export interface Key {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Right and down, as the screen has it. */
export type Way = readonly [number, number];

export type Command =
  | { readonly do: 'go'; readonly way: Way }
  | { readonly do: 'zoom'; readonly closer: boolean }
  | { readonly do: 'walk'; readonly by: 1 | -1 }
  | { readonly do: 'fit' | 'enter' | 'measure' | 'hold' | 'escape' };

const ARROWS: Readonly<Record<string, Way>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1]
};

const OTHERS: Readonly<Record<string, Command>> = {
  '+': { do: 'zoom', closer: true },
  '=': { do: 'zoom', closer: true },
  '-': { do: 'zoom', closer: false },
  '−': { do: 'zoom', closer: false },
  '0': { do: 'fit' },
  ']': { do: 'walk', by: 1 },
  n: { do: 'walk', by: 1 },
  '[': { do: 'walk', by: -1 },
  p: { do: 'walk', by: -1 },
  m: { do: 'measure' },
  g: { do: 'hold' },
  enter: { do: 'enter' },
  escape: { do: 'escape' }
};

/** Undefined where the key is not ours: with control or command it belongs to the editor, signs that are typed with both Control and Alt are themselves. */
export function commandOf({ key, ctrlKey, metaKey, altKey }: Key): Command | undefined {
  const isTyped = ctrlKey && altKey && (key === '[' || key === ']');
  if ((ctrlKey || metaKey) && !isTyped) return undefined;
  const way = Object.hasOwn(ARROWS, key) ? ARROWS[key] : undefined;
  if (way !== undefined) return { do: 'go', way };
  const name = key.toLowerCase();
  return Object.hasOwn(OTHERS, name) ? OTHERS[name] : undefined;
}
