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

/** A finding links to its page as `paving-page:/ID`. */
export const pageScheme = 'paving-page';
