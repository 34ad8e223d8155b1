// Rules in the editor: what is offered and told in them, and the jump from a finding to the rule that asks it.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { closeAll, findings, hover, idOf, open, rangeOf } from './editing.ts';
import { same, soon } from './expect.ts';
import { inFolder } from './folder.ts';

const job = `job "Rules" { rules britain }
source town-leaflet { kind handbook, title "Town leaflet" }
rule base-on-clay {
  title    "Base too thin on clay"
  concerns area
  when     soil is clay
  needs    base at least 125 mm (5 in)
  says     "The base of " area " is " missing " too thin."
  cites    town-leaflet, "page 2"
}
site { soil clay }
area terrace {
  outline rectangle 4 x 3 m
  traffic foot
  base    type-1 90 mm
  edges { all round meets house-wall }
}
`;

export function ruleTests({ suite, suiteSetup, test, teardown }: Mocha.MochaGlobals): void {
  suite('Rules', () => {
    suiteSetup(() => vscode.workspace.fs.createDirectory(inFolder('rules')));
    teardown(closeAll);

    test('quantities are offered and explained, and a name leads to its rule', async () => {
      const document = await open('rules/1.paving', job);
      const list = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        document.uri,
        rangeOf(document, 'soil is').start
      );
      const labels = list.items.map(({ label }) => (typeof label === 'string' ? label : label.label));
      same(
        ['soil', 'heaviest-traffic', 'base'].filter(word => !labels.includes(word)),
        []
      );
      same((await hover(document, 'base at least')).includes('Thickness of all stone under the bed'), true);
      same((await hover(document, 'town-leaflet, "page')).includes('Town leaflet'), true);
    });

    test('a finding leads to the rule that asks it: one of the job, and one that ships', async () => {
      const document = await open('rules/2.paving', job);
      const found = await soon('both rules are told of', () => {
        const all = findings(document);
        return all.map(idOf).includes('base-on-clay') && all.map(idOf).includes('base-too-thin') ? all : undefined;
      });
      const ruleOf = (id: string): vscode.Location | undefined =>
        found
          .find(each => idOf(each) === id)
          ?.relatedInformation?.find(({ message }) => message === 'This rule asks it.')?.location;
      const own = ruleOf('base-on-clay')!;
      same([own.uri.path.endsWith('rules/2.paving'), document.getText(own.range)], [true, 'base-on-clay']);
      const shipped = ruleOf('base-too-thin')!;
      const text = await vscode.workspace.openTextDocument(shipped.uri);
      same([text.uri.path, text.getText(shipped.range)], ['/britain.paving', 'base-too-thin']);
      const code = found.find(each => idOf(each) === 'base-on-clay')?.code;
      const target = typeof code === 'object' ? code.target : undefined;
      same([target?.scheme === document.uri.scheme, target?.fragment], [true, 'L3']);
    });
  });
}
