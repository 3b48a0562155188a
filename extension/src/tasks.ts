/** Tasks over the whole workspace, for those who have the command line installed. */
import { type Disposable, ShellExecution, Task, TaskGroup, TaskScope, tasks } from 'vscode';

const TASKS = {
  check: ['check', '.', '--format', 'github'],
  report: ['report', '.', '--to', 'html', '--out', 'reports/'],
} as const;

export const registerTasks = (): Disposable =>
  tasks.registerTaskProvider('paintplan', {
    provideTasks: () =>
      Object.entries(TASKS).map(([name, args]) => {
        const task = new Task(
          { type: 'paintplan', task: name },
          TaskScope.Workspace,
          name,
          'paintplan',
          new ShellExecution('npx', ['paintplan', ...args]),
          name === 'check' ? ['$paintplan'] : [],
        );
        task.group = name === 'check' ? TaskGroup.Test : TaskGroup.Build;
        return task;
      }),
    resolveTask: (task) => task,
  });
