import * as vscode from 'vscode';
import { rootOf, type Step, stepsOf } from './plan';
import type { Job } from './planWatcher';

/** Where a step of a job was written. */
export function placeOf(job: Job, step: Step): vscode.Location | undefined {
  const root = job.plan === undefined ? undefined : rootOf(stepsOf(job.plan), job.document.uri.path);
  if (root === undefined) {
    return undefined;
  }
  const position = new vscode.Position(step.source.line - 1, step.source.column - 1);
  return new vscode.Location(job.document.uri.with({ path: `${root}/${step.source.path}` }), position);
}
