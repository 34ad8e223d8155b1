import { isAccepted, type Acceptance, type Finding } from '../../findings/finding.ts';

/** A finding as the JSON contract has it. */
export type FindingJson = Omit<Finding, 'related' | 'fixes'> & {
  readonly related: readonly {
    message: string;
    file: string;
    line: number;
    column: number;
    endLine: number;
    endColumn: number;
  }[];
  readonly fixes: readonly { readonly title: string; readonly safe: boolean }[];
  /** Of a finding that is set aside. */
  readonly accepted?: Omit<Acceptance, 'rule'>;
};

/** The keys in the order of the contract; of a fix, what it is called and whether it is safe. */
export function findingJson(finding: Finding): FindingJson {
  const { id, family, severity, message, target, file, line, column, endLine, endColumn, values, source } = finding;
  return {
    id,
    family,
    severity,
    message,
    target,
    file,
    line,
    column,
    endLine,
    endColumn,
    values: values.map(value => ({ name: value.name, value: value.value, measure: value.measure })),
    ...(source === undefined ? {} : { source }),
    related: finding.related.map(place => ({
      message: place.message,
      file: place.file,
      line: place.line,
      column: place.column,
      endLine: place.endLine,
      endColumn: place.endColumn
    })),
    fixes: finding.fixes.map(({ title, safe }) => ({ title, safe })),
    ...(isAccepted(finding) ? { accepted: acceptanceJson(finding.accepted) } : {})
  };
}

function acceptanceJson(acceptance: Acceptance): Omit<Acceptance, 'rule'> {
  const { thing, reason, until, agreedWith, file, line, column, endLine, endColumn } = acceptance;
  return {
    thing,
    reason,
    ...(until === undefined ? {} : { until }),
    ...(agreedWith === undefined ? {} : { agreedWith }),
    file,
    line,
    column,
    endLine,
    endColumn
  };
}
