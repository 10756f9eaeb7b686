import * as vscode from 'vscode';

/** Says why the program did not start. What it takes to get going stands in the walkthrough and in one setting. */
export async function offerHelp(reason: string): Promise<void> {
  const [guide, setting] = ['How to get it', 'Open the setting'];
  const pressed = await vscode.window.showErrorMessage(reason, guide, setting);
  if (pressed === guide) {
    await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'procscript.procscript#firstFile', false);
  } else if (pressed === setting) {
    await vscode.commands.executeCommand('workbench.action.openSettings', 'procscript.path');
  }
}
