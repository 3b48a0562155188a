/** The command line. Exit codes: 0 in order, 1 findings (or different, or none found), 2 cannot run. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { TOOL_NAME } from '../plan/names.ts';
import type { Severity } from '../plan/plan.ts';
import { rules } from '../rules/index.ts';
import { isRefusal, refusal } from '../server/system.ts';
import { tool } from '../study/tool.ts';
import { check } from './commands/check.ts';
import { compareCommand } from './commands/compare.ts';
import { explainCommand } from './commands/explain.ts';
import { format } from './commands/format.ts';
import { matchCommand } from './commands/match.ts';
import { reportCommand, watchReports } from './commands/report.ts';
import { studyCommand } from './commands/study.ts';
import { heedOutput, written } from './output.ts';
import { CannotRun, say } from './say.ts';
import { REPORTS } from './targets.ts';

type Severities = Record<string, Severity | 'off'>;

function severity(value: string, before: Severities): Severities {
  const [rule = '', ...rest] = value.split('=');
  const level = rest.join('=');
  if (!rules.some((r) => r.id === rule)) throw new InvalidArgumentError(`There is no rule ‘${rule}’.`);
  if (!['off', 'hint', 'info', 'warning', 'error'].includes(level))
    throw new InvalidArgumentError(
      `‘${level}’ is no severity; write ${rule}=off, hint, info, warning or error.`,
    );
  return { ...before, [rule]: level as Severity };
}

const whole =
  (least: number) =>
  (value: string): number => {
    if (!/^\d+$/.test(value) || Number(value) < least)
      throw new InvalidArgumentError(`It must be a whole number, ${least} or more.`);
    return Number(value);
  };

function aDay(value: string): string {
  if (!/^(?:\d{4}-\d{2}-\d{2}|\d{1,7})$/.test(value))
    throw new InvalidArgumentError('It must be a date such as 2027-01-26, or the number of a day.');
  return value;
}

const oneOf =
  (...choices: string[]) =>
  (value: string): string => {
    if (!choices.includes(value)) throw new InvalidArgumentError(`It must be one of ${choices.join(', ')}.`);
    return value;
  };

function program(finish: (code: number) => void): Command {
  const paintplan = new Command(TOOL_NAME)
    .description('Layered oil paintings as plain text: check a plan, study it, report on it.')
    .version(`${tool.version} (data ${tool.data})`)
    .allowExcessArguments(false)
    .configureOutput({ outputError: (words) => say(words.trim().replace('\n(', ' (')) })
    .exitOverride();
  paintplan
    .command('check')
    .description('findings on plans, records and palettes; directories are walked, - is standard input')
    .argument('<file...>')
    .option(
      '--format <format>',
      'text, json, github or sarif',
      oneOf('text', 'json', 'github', 'sarif'),
      'text',
    )
    .option(
      '--rule <id=severity>',
      'set a rule to off, hint, info, warning or error (repeatable)',
      severity,
      {},
    )
    .option('--max-warnings <n>', 'more warnings than this fail', whole(0))
    .action((files, options) => finish(check(files, options)));
  paintplan
    .command('study')
    .description('everything computed: films, drying, colours, quantities, air, permanence')
    .argument('<file>')
    .option('--format <format>', 'text or json', oneOf('text', 'json'), 'text')
    .action((file, options) => finish(studyCommand(file, options)));
  paintplan
    .command('report')
    .description('the report: page, Markdown, data, calendar, drawing, materials list or sitting cards')
    .argument('<file...>')
    .requiredOption('--to <kind>', REPORTS.join(', '), oneOf(...REPORTS))
    .option('--out <path>', 'file, or folder for several')
    .option('--sitting <n>', 'the card of this sitting alone', whole(1))
    .addOption(
      new Option('--date <day>', 'the card of the sitting on this day alone')
        .argParser(aDay)
        .conflicts('sitting'),
    )
    .option('--watch', 'write again whenever a plan beside it changes')
    .action(async (files, options) =>
      options.watch ? watchReports(files, options) : finish(reportCommand(files, options)),
    );
  paintplan
    .command('match')
    .description('proportions of the plan’s paints for a colour')
    .argument('<file>')
    .option('--mix <name>', 'for the target of this mix')
    .option('--target <colour>', 'for this colour, as in CSS')
    .option('--film <layer>', 'how thick this glaze must lie instead')
    .option('--through <layers>', 'what these layers must be made of, together, with commas between')
    .option('--coats <n>', 'coats of a glaze at most (4); with --through', whole(1))
    .option('--by <date>', 'the last of them laid likely by this day; with --through')
    .option('--write <n>', 'write this way into the plan; with --through', whole(1))
    .option('--over <layer>', 'over this layer')
    .option('--area <area>', 'on this area')
    .option('--from <paints>', 'only from these paints, with commas between')
    .option('--most <n>', 'paints in one mixture at most (4)', whole(1))
    .option('--format <format>', 'text or json', oneOf('text', 'json'), 'text')
    .action((file, options) => finish(matchCommand(file, options)));
  paintplan
    .command('compare')
    .description('what changed in meaning between two versions of a plan')
    .argument('<old>')
    .argument('<new>')
    .option('--format <format>', 'text, md or json', oneOf('text', 'md', 'json'), 'text')
    .action((before, after, options) => finish(compareCommand(before, after, options)));
  paintplan
    .command('format')
    .description('canonical form, in place')
    .argument('<file...>')
    .option('--check', 'change nothing, exit 1 where something would change')
    .action((files, options) => finish(format(files, options)));
  paintplan
    .command('explain')
    .description('a rule, a pigment or a material, with sources')
    .argument('<word...>')
    .action((words: string[]) => finish(explainCommand(words.join(' '))));
  paintplan
    .command('lsp')
    .description('language server for any editor')
    .option('--stdio', 'over standard input and output (the only way, and the default)')
    .action(async () => {
      // its own bundle: the other commands start without it
      await import(new URL('./server.js', import.meta.url).href);
      await new Promise(() => {});
    });
  for (const command of paintplan.commands) command.exitOverride();
  return paintplan;
}

/** Says how a command came to its end, in one line; returns the exit code. */
function ended(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof CannotRun) say(error.message);
  else if (isRefusal(error)) say(`Paintplan cannot go on: ${refusal(error)}.`);
  else
    say(`A fault of paintplan itself; please report it: ${error instanceof Error ? error.message : error}`);
  if (process.env.PAINTPLAN_STACK && !(error instanceof CannotRun)) console.error(error);
  return 2;
}

/** Runs one command; returns the exit code and never throws. */
export async function main(args: readonly string[]): Promise<number> {
  let code = 0;
  heedOutput();
  try {
    await program((c) => {
      code = c;
    }).parseAsync([...args], { from: 'user' });
  } catch (error) {
    code = ended(error);
  }
  return written(code);
}

/** The program: one command, and what goes wrong beside it. */
export async function start(args: readonly string[]): Promise<void> {
  process.on('uncaughtException', (error) => process.exit(ended(error)));
  process.exitCode = await main(args);
}
