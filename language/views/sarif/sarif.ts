import { isAccepted, type Acceptance, type Finding, type Fix, type Place } from '../../findings/finding.ts';
import { howLong } from '../how-long.ts';

/** What a report in the exchange format is made from. */
export interface SarifInput {
  readonly version: string;
  /** Those that are set aside among them. */
  readonly findings: readonly Finding[];
  /** The page about a finding: its head, and the whole text. */
  readonly pageOf: (id: string) => { readonly title: string; readonly text: string };
  /** Every file asked for could be read. */
  readonly complete: boolean;
}

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json';

/** Findings as a log of the Static Analysis Results Interchange Format, version 2.1.0, an OASIS standard. */
export function sarifLog({ version, findings, pageOf, complete }: SarifInput): object {
  const ids = [...new Set(findings.map(finding => finding.id))].sort();
  return {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'paving', version, rules: ids.map(id => ruleOf(id, findings, pageOf(id))) } },
        invocations: [{ executionSuccessful: complete }],
        columnKind: 'utf16CodeUnits',
        results: findings.map(finding => resultOf(finding, ids.indexOf(finding.id)))
      }
    ]
  };
}

function ruleOf(id: string, findings: readonly Finding[], page: ReturnType<SarifInput['pageOf']>): object {
  const { family } = findings.find(finding => finding.id === id)!;
  return {
    id,
    shortDescription: { text: page.title },
    help: { text: page.text, markdown: page.text },
    properties: { family }
  };
}

function resultOf(finding: Finding, ruleIndex: number): object {
  const { id, severity, message, related, fixes } = finding;
  return {
    ruleId: id,
    ruleIndex,
    level: severity,
    message: { text: message },
    locations: [{ physicalLocation: locationOf(finding) }],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((place, index) => ({
            id: index,
            physicalLocation: locationOf(place),
            message: { text: place.message }
          }))
        }),
    ...(fixes.length === 0 ? {} : { fixes: fixes.map(fixOf) }),
    ...(isAccepted(finding) ? { suppressions: [suppressionOf(finding.accepted)] } : {})
  };
}

function suppressionOf(acceptance: Acceptance): object {
  return {
    kind: 'inSource',
    status: 'accepted',
    justification: `${acceptance.reason} (${howLong(acceptance)})`,
    location: { physicalLocation: locationOf(acceptance) }
  };
}

function fixOf({ title, edits }: Fix): object {
  const files = [...new Set(edits.map(edit => edit.place.file))];
  return {
    description: { text: title },
    artifactChanges: files.map(file => ({
      artifactLocation: artifactOf(file),
      replacements: edits
        .filter(edit => edit.place.file === file)
        .map(({ place, text }) => ({ deletedRegion: regionOf(place), insertedContent: { text } }))
    }))
  };
}

function locationOf(place: Place): object {
  return { artifactLocation: artifactOf(place.file), region: regionOf(place) };
}

function artifactOf(file: string): object {
  return { uri: file.split('/').map(encodeURIComponent).join('/') };
}

function regionOf({ line, column, endLine, endColumn }: Place): object {
  return { startLine: line, startColumn: column, endLine, endColumn };
}
