import * as vscode from 'vscode';
import type { PlanWords } from './panel/plan/messages.ts';

export const planWords = (): PlanWords => ({});
