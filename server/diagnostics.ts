import { DiagnosticSeverity, type Diagnostic, type Location } from 'vscode-languageserver';
import type { Finding, Place } from '../language/findings/finding.ts';
import { shippedPartAt } from '../language/library/shipped.ts';
import type { Evaluation } from '../language/paving.ts';
import type { FolderFiles } from './folder-files.ts';
import { pageScheme, shippedScheme } from './protocol.ts';

/** What an open file came to, and the files as its folder knows them. */
export interface Result {
  readonly evaluation: Evaluation;
  readonly files: FolderFiles;
}

/** The editor shows at most 1,000 findings of a file; beyond this many a person has other troubles. */
const MOST_FINDINGS = 500;

/** A finding as an editor is told of it. */
export interface Told {
  readonly finding: Finding;
  readonly diagnostic: Diagnostic;
  /** The files as the job knows them whose finding it is. */
  readonly files: FolderFiles;
}

/** What is told by address: of every open file, and of files that open ones use. */
export function diagnosticsOf(
  results: ReadonlyMap<string, Result>,
  failed: ReadonlySet<string>
): Map<string, Diagnostic[]> {
  const byUri = new Map<string, Diagnostic[]>([...failed].map(uri => [uri, [INTERNAL]]));
  for (const uri of results.keys()) if (!byUri.has(uri)) byUri.set(uri, []);
  for (const { uri, finding, files } of findings(results)) {
    const diagnostics = byUri.get(uri) ?? [];
    byUri.set(uri, diagnostics);
    diagnostics.push(diagnostic(finding, files));
  }
  return new Map([...byUri].map(([uri, diagnostics]) => [uri, capped(diagnostics)]));
}

/** What is told of one file. */
export function toldOf(address: string, results: ReadonlyMap<string, Result>): Told[] {
  return [...findings(results)]
    .filter(({ uri }) => uri === address)
    .map(({ finding, files }) => ({ finding, files, diagnostic: diagnostic(finding, files) }));
}

/** The findings of all results with their addresses, each once. */
function* findings(
  results: ReadonlyMap<string, Result>
): Generator<{ readonly uri: string; readonly finding: Finding; readonly files: FolderFiles }> {
  const told = new Set<string>();
  const parts = partsOfJobs(results);
  for (const [main, { evaluation, files }] of results) {
    for (const finding of evaluation.findings) {
      // A part of a job that stands open is no lonely file.
      if (finding.id === 'job-missing' && parts.has(main)) continue;
      const uri = files.uriOf(finding.file);
      const name = [uri, finding.id, finding.line, finding.column, finding.message].join('\n');
      if (told.has(name)) continue;
      told.add(name);
      yield { uri, finding, files };
    }
  }
}

/** Addresses of files that another open file uses. */
function partsOfJobs(results: ReadonlyMap<string, Result>): Set<string> {
  const parts = new Set<string>();
  for (const { evaluation, files } of results.values())
    if (evaluation.job !== undefined) for (const { file } of evaluation.texts.slice(1)) parts.add(files.uriOf(file));
  return parts;
}

export function rangeOf(place: Omit<Place, 'file'>): Diagnostic['range'] {
  return {
    start: { line: place.line - 1, character: place.column - 1 },
    end: { line: place.endLine - 1, character: place.endColumn - 1 }
  };
}

const SEVERITIES = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information
} as const;

/** Where the editor finds a place: in a file of the folder, or in what ships. */
export function locationIn(files: FolderFiles, place: Place): Location {
  return shippedLocation(place) ?? { uri: files.uriOf(place.file), range: rangeOf(place) };
}

/** Undefined for a place in a file. */
export function shippedLocation(place: Place): Location | undefined {
  const shipped = shippedPartAt(place);
  if (shipped === undefined) return undefined;
  const { file, before } = shipped;
  const inPart = { ...place, line: place.line - before, endLine: place.endLine - before };
  return { uri: `${shippedScheme}:/${file}`, range: rangeOf(inPart) };
}

/** Of what ships the page; a rule of one's own is its own page. */
function pageOf({ id, rule }: Finding, files: FolderFiles): string {
  if (rule === undefined || shippedPartAt(rule) !== undefined) return `${pageScheme}:/${id}`;
  return `${files.uriOf(rule.file)}#L${rule.line}`;
}

function diagnostic(finding: Finding, files: FolderFiles): Diagnostic {
  const { rule } = finding;
  return {
    range: rangeOf(finding),
    severity: SEVERITIES[finding.severity],
    source: 'paving',
    code: finding.id,
    codeDescription: { href: pageOf(finding, files) },
    message: finding.source === undefined ? finding.message : `${finding.message}\n${finding.source}`,
    relatedInformation: [
      ...finding.related.map(related => ({ location: locationIn(files, related), message: related.message })),
      ...(rule === undefined ? [] : [{ location: locationIn(files, rule), message: 'This rule asks it.' }])
    ]
  };
}

/** Sorted by weight, so that what is left out weighs least; how many are left out is said. */
function capped(diagnostics: Diagnostic[]): Diagnostic[] {
  if (diagnostics.length <= MOST_FINDINGS) return diagnostics;
  const sorted = [...diagnostics].sort((left, right) => (left.severity ?? 1) - (right.severity ?? 1));
  const more = `${(diagnostics.length - MOST_FINDINGS).toLocaleString('en')} more findings in this file are not shown.`;
  return [
    ...sorted.slice(0, MOST_FINDINGS),
    { range: sorted[0]!.range, severity: DiagnosticSeverity.Information, source: 'paving', message: more }
  ];
}

const INTERNAL: Diagnostic = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
  severity: DiagnosticSeverity.Error,
  source: 'paving',
  code: 'internal',
  codeDescription: { href: `${pageScheme}:/internal` },
  message: 'This program failed on this file; its numbers are not shown. The log (Output, Paving job spec) tells where.'
};
