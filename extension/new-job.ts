// A new job: asks a person what the server wants to know, and opens the spec that comes of it.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerTo, tellWhyNot } from './asking.ts';
import {
  checkAnswerRequest,
  newJobQuestionsRequest,
  writeNewJobRequest,
  type CheckAnswerParams,
  type CheckAnswerResult,
  type NewJobAnswers,
  type NewJobQuestion,
  type NewJobQuestionsParams,
  type NewJobQuestionsResult,
  type NewJobText,
  type WriteNewJobParams,
  type WriteNewJobResult
} from '../server/protocol.ts';

const newJobCommand = 'paving.newJob';

/** The command asks; given answers, as a shortcut may do, it asks nothing. In the explorer it is given a folder. */
export function registerNewJob(client: BaseLanguageClient): vscode.Disposable {
  return vscode.commands.registerCommand(newJobCommand, async (given?: NewJobAnswers | vscode.Uri | null) => {
    const folder = given instanceof vscode.Uri ? given : vscode.workspace.workspaceFolders?.[0]?.uri;
    const answers = given instanceof vscode.Uri || !given ? await askAll(client) : given;
    if (answers === undefined) return;
    const params: WriteNewJobParams = { answers };
    const result = await answerTo<WriteNewJobResult>(client, writeNewJobRequest, params);
    if (result === undefined) await tellWhyNot(client);
    else if ('problem' in result) void vscode.window.showErrorMessage(result.problem);
    else await openText(result, folder);
  });
}

// ---- asking ----

/** An answer, a step back, or nothing: the person has left. */
type Given = { readonly answer: string } | 'back' | undefined;

interface Asked {
  readonly question: NewJobQuestion;
  readonly steps: number;
  readonly isFirst: boolean;
}

async function askAll(client: BaseLanguageClient): Promise<NewJobAnswers | undefined> {
  let answers: NewJobAnswers = {};
  for (let index = 0; ;) {
    const params: NewJobQuestionsParams = { answers };
    const asking = await answerTo<NewJobQuestionsResult>(client, newJobQuestionsRequest, params);
    if (asking === undefined) {
      await tellWhyNot(client);
      return undefined;
    }
    const { steps, questions } = asking;
    const question = questions[index];
    if (question === undefined) return answers;
    const asked = { question, steps, isFirst: index === 0 };
    const given = await (question.choices
      ? letPick(asked, question.choices)
      : letType(asked, answer => problemOf(client, { question: question.id, answer, answers })));
    if (given === undefined) return undefined;
    if (given !== 'back') answers = { ...answers, [question.id]: given.answer };
    index += given === 'back' ? -1 : 1;
  }
}

async function problemOf(client: BaseLanguageClient, params: CheckAnswerParams): Promise<string | undefined> {
  const checked = await answerTo<CheckAnswerResult>(client, checkAnswerRequest, params);
  return checked === undefined ? vscode.l10n.t('The language server does not answer.') : checked.problem;
}

function letPick(asked: Asked, choices: NonNullable<NewJobQuestion['choices']>): Promise<Given> {
  const list = vscode.window.createQuickPick<NonNullable<NewJobQuestion['choices']>[number]>();
  list.items = choices;
  list.activeItems = choices.filter(({ id }) => id === asked.question.usual);
  list.placeholder = asked.question.hint;
  list.matchOnDetail = true;
  return given(list, asked, answered => {
    list.onDidAccept(() => {
      const [chosen] = list.selectedItems;
      if (chosen) answered(chosen.id);
    });
  });
}

function letType(asked: Asked, check: (answer: string) => Promise<string | undefined>): Promise<Given> {
  const box = vscode.window.createInputBox();
  box.value = asked.question.usual;
  box.prompt = asked.question.hint;
  const checkTyped = async () => {
    const typed = box.value;
    const problem = await check(typed.trim());
    // Typing goes on while the server looks: of an older text nothing is told.
    if (typed === box.value) box.validationMessage = problem;
    return typed === box.value && problem === undefined;
  };
  return given(box, asked, answered => {
    box.onDidChangeValue(() => void checkTyped());
    box.onDidAccept(async () => {
      if (await checkTyped()) answered(box.value.trim());
    });
  });
}

/** Shows a list or a box until it is answered, left, or gone back from. */
function given(
  input: vscode.QuickPick<vscode.QuickPickItem> | vscode.InputBox,
  { question, steps, isFirst }: Asked,
  listen: (answered: (answer: string) => void) => void
): Promise<Given> {
  input.title = `${vscode.l10n.t('New job')}: ${question.title}`;
  input.step = question.step;
  input.totalSteps = steps;
  input.ignoreFocusOut = true;
  input.buttons = isFirst ? [] : [vscode.QuickInputButtons.Back];
  return new Promise<Given>(resolve => {
    listen(answer => resolve({ answer }));
    input.onDidTriggerButton(() => resolve('back'));
    input.onDidHide(() => resolve(undefined));
    input.show();
  }).finally(() => input.dispose());
}

// ---- the new text ----

/**
 * Opens the spec, and puts the cursor on what is measured first. In a folder it is a file from the beginning: what is
 * undone afterwards is the person's own typing, never the spec.
 */
async function openText({ text, fileName, firstToMeasure }: NewJobText, folder: vscode.Uri | undefined): Promise<void> {
  const document =
    folder && vscode.workspace.fs.isWritableFileSystem(folder.scheme) !== false
      ? await vscode.workspace.openTextDocument(await newFile(folder, fileName, text))
      : await vscode.workspace.openTextDocument({ language: 'paving', content: text });
  const { start, end } = firstToMeasure;
  const selection = new vscode.Range(start.line, start.character, end.line, end.character);
  await vscode.window.showTextDocument(document, { selection });
}

async function newFile(folder: vscode.Uri, fileName: string, text: string): Promise<vscode.Uri> {
  const file = await freeFile(folder, fileName);
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  return file;
}

/** The first of `patio.paving`, `patio-2.paving`, … that no file has, and no unsaved text wants. */
async function freeFile(folder: vscode.Uri, fileName: string): Promise<vscode.Uri> {
  for (let count = 1; ; count++) {
    const file = vscode.Uri.joinPath(folder, count === 1 ? fileName : fileName.replace('.', `-${count}.`));
    const isWanted = vscode.workspace.textDocuments.some(({ uri, isUntitled }) => isUntitled && uri.path === file.path);
    if (!isWanted && !(await isThere(file))) return file;
  }
}

async function isThere(file: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(file);
    return true;
  } catch {
    return false;
  }
}
