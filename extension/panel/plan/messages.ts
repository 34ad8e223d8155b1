// What the editor's client and the live plan say to each other.
import type { DrawnElement } from '../../../server/protocol.ts';
import type { Content, LivePlan, PlanPatch, SectionLine } from '../../../server/plan-protocol.ts';

/** The panel's own words, in the language of the editor, by name. */
export type PlanWords = Readonly<Record<string, string>>;

export type ToPlan =
  /** A plan as a whole; `about` is the address of the job's text. */
  | {
      readonly kind: 'plan';
      readonly about: string;
      readonly number: number;
      readonly words: PlanWords;
      readonly plan: LivePlan;
    }
  /** What differs from the plan of that number; a panel that has another one asks anew with `ready`. */
  | { readonly kind: 'patch'; readonly number: number; readonly since: number; readonly patch: PlanPatch }
  /** Nothing can be shown, or not any more: what was shown stays, dimmed. */
  | { readonly kind: 'problem'; readonly about: string; readonly words: PlanWords; readonly problem: string }
  /** The cursor stands in these things, the innermost first: they are outlined, and nothing scrolls. */
  | { readonly kind: 'at-cursor'; readonly things: readonly string[] }
  | { readonly kind: 'section'; readonly drawing: DrawnElement; readonly text: string }
  | { readonly kind: 'no-section'; readonly problem: string }
  /** What was dragged stays where it was. */
  | { readonly kind: 'not-dragged'; readonly problem: string };

export type FromPlan =
  /** The page has begun, or needs the plan as a whole. */
  | { readonly kind: 'ready' }
  /** Go to its place in the text. */
  | { readonly kind: 'open'; readonly thing: string }
  /** What is selected in the plan is marked in the text, which doesn't scroll; nothing is where it is empty. */
  | { readonly kind: 'select'; readonly thing: string }
  | { readonly kind: 'drag'; readonly thing: string; readonly to: readonly [number, number] }
  | { readonly kind: 'section'; readonly along: SectionLine };

/** What the page keeps, so that it comes back as it was after the window is opened again. */
export interface PlanState {
  readonly about: string;
  /** The middle of what is seen, mm on the ground; absent where all of it is to be seen. */
  readonly view?: { readonly x: number; readonly y: number; readonly pixelsPerMetre: number };
  /** Radians by which the plan is turned. */
  readonly turn: number;
  readonly hidden: readonly Content[];
  readonly selected: string;
}
