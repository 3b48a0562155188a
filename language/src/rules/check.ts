/** Runs the rules over a plan and its study: the one place that knows `allow`, severities and order. */
import { nearest } from '../materials/nearest.ts';
import type { Allow, Fix, Layer, Plan, Severity } from '../plan/plan.ts';
import { wordingOf } from '../plan/surroundings.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import { withoutFollowing } from './doubtful.ts';
import { gate } from './gate.ts';
import { rules } from './index.ts';
import type { Finding, Rule, RuleReport } from './rule.ts';
import { takeOut } from './shared/fixes.ts';
import { type Alternative, alternatives } from './shared/instead.ts';
import { didYouMean, quoted } from './shared/words.ts';
import type { Patience, Reread } from './trial.ts';

/** How the rules are run: `severities` by a rule’s id, `off` silences it. */
export interface CheckSettings {
  readonly severities?: Readonly<Record<string, Severity | 'off'>>;
  /** false leaves out the rules that need predicted colours: the typing path */
  readonly colour?: boolean;
  /** a rule that throws takes everything down: for tests only */
  readonly strict?: boolean;
  /** how a text with a fix put in is read; a memory kept between calls makes that cheap */
  readonly reread?: Reread;
  /** how much may be tried; without it, every fix is */
  readonly patience?: Patience;
}

const layerRules = rules.filter((r) => r.checkLayer);
const ruleById = new Map(rules.map((r) => [r.id, r]));

function reports(
  rule: Rule,
  plan: Plan,
  said: () => Iterable<RuleReport>,
  strict: boolean,
): readonly RuleReport[] {
  if (strict) return [...said()];
  try {
    return [...said()];
  } catch (error) {
    // one broken rule must not silence the others
    const message = `The rule ${quoted(rule.id)} could not look at this file (${error instanceof Error ? error.message : String(error)}). The other rules did.`;
    return [{ message, place: { uri: plan.uri, start: 0, end: 0 }, severity: 'info' }];
  }
}

/** What a layer was when its rules were asked, and those of them that spoke or looked further. */
interface Asked {
  readonly drying: LayerStudy['drying'];
  readonly open: readonly Rule[];
}

/** By the wording of a layer, which stands for all that the file says of it. */
const asked = new WeakMap<object, Asked>();

/** Reports of rules about single layers. A rule that was silent of a layer alone is silent until it changes. */
function* layerReports(
  plan: Plan,
  study: Study,
  ofLayers: readonly Rule[],
  strict: boolean,
): Generator<{ readonly rule: Rule; readonly report: RuleReport }> {
  let looked = false;
  const others = () => {
    looked = true;
    return study;
  };
  for (const layer of study.layers) {
    const wording = wordingOf(layer.layer);
    const before = wording && asked.get(wording);
    // how a layer dries may rest on what was seen of others
    const known = before && before.drying === layer.drying ? before.open : undefined;
    const open: Rule[] = [];
    for (const rule of known ?? ofLayers) {
      looked = false;
      const said = reports(rule, plan, () => rule.checkLayer?.(layer, others, plan) ?? [], strict);
      for (const report of said) yield { rule, report };
      if (looked || said.length > 0) open.push(rule);
    }
    if (wording && !known) asked.set(wording, { drying: layer.drying, open });
  }
}

/** A finding with what its rule objects to. */
type Judged = Finding & Pick<RuleReport, 'objection'>;

function whole(rule: string, severity: Severity, { fixes = [], ...report }: RuleReport): Judged {
  return {
    ...report,
    rule,
    severity: report.severity ?? severity,
    related: report.related ?? [],
    get fixes() {
      return typeof fixes === 'function' ? fixes() : fixes;
    },
  };
}

/** How many pigments are named instead of one, and how many are tried for that: where it matters, and where it is a remark. */
const INSTEAD = { grave: { named: 3, tried: 8 }, slight: { named: 2, tried: 4 } };

/** The nearest pigments that may stand in for one objected to, as far as the gate lets them through. */
function insteadOf(
  study: Study,
  { objection, severity, layer }: Judged,
  passes: (fix: Fix) => boolean,
): Alternative[] {
  const most = INSTEAD[severity === 'error' || severity === 'warning' ? 'grave' : 'slight'];
  const found: Alternative[] = [];
  let tried = 0;
  for (const one of objection ? alternatives(study, objection, layer) : []) {
    if (passes(one.fix)) found.push(one);
    if (found.length === most.named || ++tried === most.tried) break;
  }
  return found;
}

/** The finding with those of its fixes that pass the gate, tried when first looked at. */
function gated(
  finding: Judged,
  study: Study,
  pass: ReturnType<typeof gate>,
  patience: Patience | undefined,
): Finding {
  const { rule, severity, message, place, related, layer, unnecessary, objection } = finding;
  let kept: Finding['fixes'] | undefined;
  let instead: readonly Alternative[] | undefined;
  const others = (): readonly Alternative[] => {
    if (!objection || (patience && patience.left <= 0)) return instead ?? [];
    // whatever is true of it, in its time it was what there was
    const bringing = objection.past ? 'nothing grave' : 'nothing';
    instead ??= insteadOf(study, finding, (fix) => pass(finding, [fix], bringing)?.length === 1);
    return instead;
  };
  return {
    rule,
    severity,
    message,
    place,
    related,
    ...(layer === undefined ? {} : { layer }),
    ...(unnecessary === undefined ? {} : { unnecessary }),
    get fixes() {
      kept ??= pass(finding, finding.fixes);
      // a record tells what was painted: nothing of it is exchanged
      return [...(kept ?? []), ...(objection?.past ? [] : others().map((o) => o.fix))];
    },
    get instead() {
      return others();
    },
  };
}

/** Every allow with the layer it stands in, if any. */
function allows(plan: Plan): { readonly allow: Allow; readonly layer?: Layer }[] {
  const all: { readonly allow: Allow; readonly layer?: Layer }[] = plan.allows.map((allow) => ({ allow }));
  for (const layer of plan.layers) for (const allow of layer.allows) all.push({ allow, layer });
  return all;
}

const unlike = (a: Finding, b: Finding) =>
  a.place.start - b.place.start ||
  a.place.end - b.place.end ||
  (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);

/** What the rules say of a plan, with the fixes that keep their promise. */
export function findings(plan: Plan, study: Study, settings: CheckSettings = {}): Finding[] {
  const all = { ...settings, colour: true };
  const found = judged(plan, study, settings);
  const known = settings.colour === false ? undefined : found;
  const pass = gate(plan, study, (p, s) => judged(p, s, all), known, settings.reread, settings.patience);
  return found.map((f) => gated(f, study, pass, settings.patience));
}

/** What the rules say, with every fix they think of. */
function judged(plan: Plan, study: Study, settings: CheckSettings): Judged[] {
  const coloured = settings.colour !== false;
  const off = new Set(
    Object.entries(settings.severities ?? {}).flatMap(([rule, level]) => (level === 'off' ? [rule] : [])),
  );
  const levelled = (report: RuleReport, rule: string): RuleReport => {
    const level = settings.severities?.[rule];
    return level === undefined || level === 'off' ? report : { ...report, severity: level };
  };
  const used = new Set<Allow>();
  const given = allows(plan);
  const byRule = new Map<string, typeof given>();
  for (const g of given) byRule.set(g.allow.rule, [...(byRule.get(g.allow.rule) ?? []), g]);
  const silenced = (f: Finding): boolean => {
    const matching = byRule.get(f.rule)?.find(({ layer }) => layer === undefined || layer.index === f.layer);
    if (matching) used.add(matching.allow);
    return matching !== undefined;
  };

  const findingsSoFar: Judged[] = plan.problems.map((p) => whole(p.rule, p.severity, levelled(p, p.rule)));
  const ran = new Set<string>();
  const strict = settings.strict === true;
  const tell = (rule: Rule, report: RuleReport): void => {
    const finding = whole(rule.id, rule.severity, levelled(report, rule.id));
    if (!silenced(finding)) findingsSoFar.push(finding);
  };
  for (const rule of rules) {
    if (
      !rule.appliesTo.includes(plan.kind) ||
      (rule.needsColour && !coloured) ||
      rule.id === 'unneeded-allow'
    )
      continue;
    ran.add(rule.id);
    for (const report of reports(rule, plan, () => rule.check?.(plan, study) ?? [], strict))
      tell(rule, report);
  }
  const ofLayers = layerRules.filter((r) => r.appliesTo.includes(plan.kind));
  for (const { rule, report } of layerReports(plan, study, ofLayers, strict)) tell(rule, report);
  for (const { allow, layer } of given) {
    const rule = ruleById.get(allow.rule);
    if (!rule) {
      const near = nearest(allow.rule, [...ruleById.keys()], 2);
      findingsSoFar.push(
        whole(
          'unknown-rule',
          'warning',
          levelled(
            {
              message: `There is no rule ${quoted(allow.rule)}.${didYouMean(near)}`,
              place: allow.rulePlace,
              layer: layer?.index,
              fixes: near.map((n) => ({
                title: `Change to ${n}`,
                edits: [{ place: allow.rulePlace, text: n }],
              })),
            },
            'unknown-rule',
          ),
        ),
      );
    } else if (!used.has(allow) && (ran.has(rule.id) || !rule.needsColour))
      findingsSoFar.push(
        whole(
          'unneeded-allow',
          'warning',
          levelled(
            {
              message: `Nothing here needs ${quoted(`allow ${allow.rule}`)}: the rule has nothing to say. Take it out, so that it cannot hide a later fault.`,
              place: allow.place,
              layer: layer?.index,
              fixes: [takeOut('Take it out', plan, allow.place)],
              unnecessary: true,
            },
            'unneeded-allow',
          ),
        ),
      );
  }
  return withoutFollowing(plan, findingsSoFar, ruleById)
    .filter((f) => !off.has(f.rule))
    .sort(unlike)
    .filter(
      (f, i, all) =>
        i === 0 ||
        f.rule !== all[i - 1]?.rule ||
        f.message !== all[i - 1]?.message ||
        f.place.start !== all[i - 1]?.place.start,
    );
}
