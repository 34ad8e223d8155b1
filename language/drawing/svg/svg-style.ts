import type { Tint } from '../tints.ts';

type Colour = 'paper' | 'ink' | 'ground' | 'unit' | Tint;

/** Every colour of a drawing is a property that whoever shows it may set; only lines and letters must stand out. */
const LIGHT: Readonly<Record<Colour, string>> = {
  paper: '#fff',
  ink: '#000',
  ground: '#d4d4d4',
  unit: '#fff',
  light: '#fbf9f3',
  grey: '#ececec',
  dark: '#c9cbce',
  red: '#f2d3ca',
  yellow: '#f5e8c8',
  brown: '#e6d5c3',
  green: '#dbe8d3',
  blue: '#d3e0ec'
};

const DARK: Readonly<Record<Colour, string>> = {
  paper: '#1c1d1f',
  ink: '#f1f1ef',
  ground: '#0e0f10',
  unit: '#2c2e31',
  light: '#43423d',
  grey: '#37393c',
  dark: '#17181a',
  red: '#50302a',
  yellow: '#4b4127',
  brown: '#40332a',
  green: '#2c3d2a',
  blue: '#26384a'
};

const COLOURS = Object.keys(LIGHT) as Colour[];

function properties(colourOf: (colour: Colour) => string): string {
  return COLOURS.map(colour => `--plan-${colour}:${colourOf(colour)}`).join(';');
}

/** Nothing but lines: contrast is asked for, or ink and paper are black and white. */
function plain(ink: string, paper: string): string {
  return properties(colour => (colour === 'ink' ? ink : paper));
}

/** Paper and ink are then those of texts. */
const OF_THEME = '--plan-paper:var(--vscode-editor-background);--plan-ink:var(--vscode-editor-foreground)';

/** Which colour each shape has, and how its lines and letters look. */
const CLASSES = [
  ...COLOURS.map(colour => `.plan-fill-${colour}{fill:var(--plan-${colour})}`),
  '.plan-pen{stroke:var(--plan-ink)}',
  // Letters stand clear of the lines under them.
  '.plan text{fill:var(--plan-ink);stroke:var(--plan-paper);stroke-width:.2em;stroke-linejoin:round;paint-order:stroke}'
];

/** What no style is known to falls back on the attributes beside the classes: black on white. */
export const STYLE = [
  `.plan{${properties(colour => LIGHT[colour])}}`,
  `@media (prefers-color-scheme:dark){.plan{${properties(colour => DARK[colour])}}}`,
  `@media (prefers-contrast:more){.plan{${plain('#000', '#fff')}}}`,
  `@media (prefers-contrast:more) and (prefers-color-scheme:dark){.plan{${plain('#fff', '#000')}}}`,
  `@media (forced-colors:active){.plan{forced-color-adjust:none;${plain('CanvasText', 'Canvas')}}}`,
  `@media print{.plan{${plain('#000', '#fff')}}}`,
  ...CLASSES
].join('\n');

/**
 * The same where the theme of an editor tells what is light and dark, as the class of the page's body: paper and ink are
 * those of its texts.
 */
export const STYLE_IN_EDITOR = [
  `.plan{${properties(colour => LIGHT[colour])};${OF_THEME}}`,
  `.vscode-dark .plan{${properties(colour => DARK[colour])};${OF_THEME}}`,
  `.vscode-high-contrast .plan{${plain('var(--vscode-editor-foreground)', 'var(--vscode-editor-background)')}}`,
  `@media (forced-colors:active){.plan{forced-color-adjust:none;${plain('CanvasText', 'Canvas')}}}`,
  ...CLASSES
].join('\n');

/** What stands beside a class for printers that read no style. */
export const WITHOUT_STYLE = { paper: '#fff', ink: '#000', ground: '#d4d4d4', unit: '#fff' } as const;
