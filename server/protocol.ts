// What the language server and the editor client say to each other beyond the standard protocol.

/** The server asks the client for a file's text where it cannot read files itself. */
export const readFileRequest = 'paving/readFile';

export interface ReadFileParams {
  readonly uri: string;
  /** The folder the file has to be in. */
  readonly folder: string;
}

/**
 * Why a file has no text: it is not there, it may not be read, it is a folder, it lies outside the folder (or a link may lead out of it),
 * it holds no text, its text is not UTF-8, it is larger than `largestFile`.
 */
export type ReadFileProblem = 'missing' | 'forbidden' | 'folder' | 'outside' | 'binary' | 'encoding' | 'too-large';

export type ReadFileResult = { readonly text: string } | { readonly problem: ReadFileProblem };

/**
 * In bytes. The language refuses a text of more than a million characters with a finding at its place; what is larger
 * than this is no spec at all and is not even read.
 */
export const largestFile = 20_000_000;

/** The server asks the client for the job specs in a folder, wherever it lies. */
export const listFilesRequest = 'paving/listFiles';

export interface ListFilesParams {
  readonly folder: string;
}

export interface ListFilesResult {
  readonly uris: readonly string[];
  /** False when there are more than `mostFilesListed`. */
  readonly all: boolean;
}

/** More job specs than anyone keeps in one folder; looking through them all would hold up the editor. */
export const mostFilesListed = 1_000;

/** What ships as spec text is read as `paving-shipped:/FILE`, and can't be changed there. */
export const shippedScheme = 'paving-shipped';

/** The client asks how a table would be written as points. */
export const pointsFromTableRequest = 'paving/pointsFromTable';

export interface TextRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

export interface PointsFromTableParams {
  readonly textDocument: { readonly uri: string };
  /** What is selected, or where the cursor stands. */
  readonly range: TextRange;
  readonly table: string;
}

export type PointsFromTableResult =
  | {
      /** Ways to write them, the likeliest first: `text` in the place of `range`. */
      readonly choices: readonly { readonly title: string; readonly text: string; readonly range: TextRange }[];
      /** It can hardly be anything else, and there is one way alone. */
      readonly isPlain: boolean;
    }
  | { readonly problem: string };

/** Characters of the largest table that is looked at; a longer text on the clipboard is something else. */
export const largestTable = 200_000;

/** The client lets the person name what has just been given a name, at: address, line and character from nought. */
export const nameHereCommand = 'paving.nameHere';

/** The server tells the client when it begins to work something out, and when nothing is left to do. */
export const workNotification = 'paving/work';

export interface WorkParams {
  readonly working: boolean;
}

/** A finding links to its page as `paving-page:/ID`. */
export const pageScheme = 'paving-page';

/** The client asks the server for the questions that lead to a new job, as befits what was answered so far. */
export const newJobQuestionsRequest = 'paving/newJobQuestions';

/** By question: the id of a choice, or what was typed. */
export type NewJobAnswers = Readonly<Record<string, string>>;

export interface NewJobQuestionsParams {
  readonly answers: NewJobAnswers;
}

export interface NewJobQuestionsResult {
  readonly steps: number;
  readonly questions: readonly NewJobQuestion[];
}

export interface NewJobQuestion {
  readonly id: string;
  /** From 1; several questions may share one. */
  readonly step: number;
  readonly title: string;
  readonly hint: string;
  /** Absent where the answer is typed. */
  readonly choices?: readonly { readonly id: string; readonly label: string; readonly detail: string }[];
  /** What was answered so far, else what is usual. */
  readonly usual: string;
}

/** The client asks whether an answer can be taken, while it is typed. */
export const checkAnswerRequest = 'paving/checkAnswer';

export interface CheckAnswerParams {
  readonly question: string;
  readonly answer: string;
  /** The answers to the other questions so far. */
  readonly answers: NewJobAnswers;
}

export interface CheckAnswerResult {
  /** What to write instead; absent where the answer can be taken. */
  readonly problem?: string;
}

/** The client asks for the spec that the answers lead to; where one is missing, the usual one counts. */
export const writeNewJobRequest = 'paving/writeNewJob';

export interface WriteNewJobParams {
  readonly answers: NewJobAnswers;
}

export type WriteNewJobResult = NewJobText | { readonly problem: string };

export interface NewJobText {
  readonly text: string;
  readonly fileName: string;
  /** The value to measure first; 0-based lines and characters, as in the protocol. */
  readonly firstToMeasure: { readonly start: TextPosition; readonly end: TextPosition };
}

interface TextPosition {
  readonly line: number;
  readonly character: number;
}

// ---- comparing with another text of a job ----

/**
 * The client tells that the person trusts the folder: from then on git may be started. It may be told at the start too, as
 * the initialization option `trusted`.
 */
export const trustedNotification = 'paving/trusted';

export interface StartOptions {
  readonly trusted?: boolean;
}

/** The client tells that commits may have been made meanwhile: the person comes back to a text. */
export const lookAgainNotification = 'paving/lookAgain';

/** The server tells that what stands at HEAD is another commit than before. */
export const headMovedNotification = 'paving/headMoved';

/** The lens of what differs since HEAD leads there, with the address of the text. */
export const compareWithHeadCommand = 'paving.compareWithHead';

/** The client asks for the revisions that a text may be compared with. */
export const revisionsRequest = 'paving/revisions';

export interface RevisionsParams {
  readonly textDocument: { readonly uri: string };
}

export type RevisionsResult = { readonly revisions: readonly NamedRevision[] } | { readonly problem: string };

export interface NamedRevision {
  /** As git knows it: `quote-1`, `HEAD`, `3f61a22`. */
  readonly name: string;
  readonly kind: 'head' | 'branch' | 'tag' | 'commit';
  /** `2027-06-30`; empty where none is told. */
  readonly date: string;
  readonly subject: string;
}

/** The client asks what differs between an older text of a job and the newest one. */
export const compareRequest = 'paving/compare';

export interface CompareParams {
  readonly textDocument: { readonly uri: string };
  readonly against: ComparedWith;
}

/** A revision, or another file. */
export type ComparedWith = { readonly revision: string } | { readonly uri: string };

export type CompareResult = ShownComparison | { readonly problem: string };

/** A comparison as it is shown: rows of words with the places that they lead to. */
export interface ShownComparison {
  readonly title: string;
  /** What is compared: `quote-1 to the working copy`. */
  readonly between: string;
  /** Said above all. */
  readonly notes: readonly string[];
  /** Of a newest text with an error: `the error in line 12`. */
  readonly broken?: string;
  readonly sections: readonly ShownSection[];
  readonly drawing?: DrawnElement;
}

export interface ShownSection {
  readonly id: string;
  readonly heading: string;
  readonly notes: readonly string[];
  readonly columns: readonly ShownColumn[];
  readonly rows: readonly ShownRow[];
}

export interface ShownColumn {
  readonly head: string;
  /** Numbers stand flush right. */
  readonly right?: boolean;
  /** Sentences, which may take several lines. */
  readonly prose?: boolean;
}

export interface ShownRow {
  /** One a column. */
  readonly cells: readonly string[];
  readonly places: { readonly before?: TextLocation; readonly after?: TextLocation };
  /** Numbers of the edits behind it, as they are counted in the section `edits`. */
  readonly by: readonly number[];
}

export interface TextLocation {
  readonly uri: string;
  readonly range: TextRange;
}

/** An element of a drawing, or of what it holds: words are strings. */
export interface DrawnElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly inside: readonly (DrawnElement | string)[];
}

/** A text of a revision is read as `paving-older:…`, and can't be changed there. */
export const olderScheme = 'paving-older';

/** The client asks for the text behind such an address. */
export const olderTextRequest = 'paving/olderText';

export interface OlderTextParams {
  readonly uri: string;
}

export type OlderTextResult = { readonly text: string } | { readonly problem: string };
