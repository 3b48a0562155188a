/** Tasks over the whole workspace, for those who have the command line installed. */
import { type Disposable, ShellExecution, Task, TaskGroup, TaskScope, tasks, workspace } from 'vscode';

const TASKS = {
  check: ['check', '.', '--format', 'github'],
  report: ['report', '.', '--to', 'html', '--out', 'reports/'],
  card: ['report', '.', '--to', 'card', '--out', 'reports/'],
} as const;

/** A task runs a program that the workspace brings: only where it is trusted, and on a disk. */
const mayRun = () =>
  workspace.isTrusted && (workspace.workspaceFolders ?? []).some((f) => f.uri.scheme === 'file');

export const registerTasks = (): Disposable =>
  tasks.registerTaskProvider('paintplan', {
    provideTasks: () =>
      Object.entries(mayRun() ? TASKS : {}).map(([name, args]) => {
        const task = new Task(
          { type: 'paintplan', task: name },
          TaskScope.Workspace,
          name,
          'paintplan',
          // never fetched: what is not installed is not run
          new ShellExecution('npx', ['--no', 'paintplan', ...args]),
          name === 'check' ? ['$paintplan'] : [],
        );
        task.group = name === 'check' ? TaskGroup.Test : TaskGroup.Build;
        return task;
      }),
    resolveTask: (task) => task,
  });
