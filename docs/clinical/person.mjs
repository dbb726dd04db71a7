import { NOT_KNOWN } from '@footboard/shared/capabilities/assessments/rules/tier';
import { planStay } from '@footboard/shared/capabilities/handling/rules/plan';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { words } from './markdown.mjs';

/** Invented people for the worked examples of this document, put to the rules that make the plan. */
const ALL = DEFAULT_PROTOCOL.stages.map((s) => s.shows);
const fact = { id: 'check', occurred: 0 };
const alone = (stage) => [
  stage,
  { stage, outcome: 'met', how: 'free', people: 0, oneLeg: null, fact, securedWith: undefined },
];

/** Cleared every stage today, free and alone; 70 kg measured. */
export const WALKER = {
  weightBearing: { 'left-leg': 'unrestricted', 'right-leg': 'unrestricted' },
  bears: 'full',
  followsInstructions: 'yes',
  waitsForHelp: 'yes',
  armStrength: 'both',
  grip: 'both',
  sittingBalance: true,
  sitsUnheld: true,
  comesAlone: true,
  assists: 'fully',
  strongerSide: null,
  weightKg: 70,
  weightMarked: 'measured',
  cleared: new Set(ALL),
  clearedFree: new Set(ALL),
  standings: new Map(ALL.map(alone)),
  because: [],
  nextChange: null,
};
/** The same, bearing part of the weight. */
export const PARTIAL = { ...WALKER, bears: 'partial' };
/** Nobody has looked yet. */
export const UNSEEN = {
  ...WALKER,
  weightBearing: { 'left-leg': 'none', 'right-leg': 'none' },
  bears: 'none',
  followsInstructions: 'not known',
  waitsForHelp: 'not known',
  armStrength: 'not known',
  grip: 'not known',
  sittingBalance: false,
  sitsUnheld: false,
  comesAlone: false,
  assists: 'not',
  cleared: new Set(),
  clearedFree: new Set(),
  standings: new Map(),
};

export const stated = (of) => ({ value: of, fact: 'entry', at: 0 });
export const NO_ORDERS = { activity: null, weightBearing: new Map(), precautions: new Map(), brace: null };

export const person = (capability, extra = {}) => ({
  t: 1,
  rules: DEFAULT_RULES,
  tier: { word: 'Walk', because: [] },
  capability,
  trust: { state: 'current', openTriggers: [], conflicts: [], because: [] },
  holds: [],
  orders: NO_ORDERS,
  attachments: [],
  weight: stated({ kg: 70, how: 'measured' }),
  onOwn: null,
  seenWalking: null,
  walkingSupport: null,
  pressureDrop: null,
  firstTimeUpPending: null,
  sedatedAt: null,
  everWalkedHere: true,
  fence: null,
  spineOrPelvisInDoubt: null,
  ...extra,
});
export const notKnown = (capability, extra = {}) =>
  person(capability, {
    tier: { word: NOT_KNOWN, because: [] },
    trust: { state: 'not-known', openTriggers: [], conflicts: [], because: [] },
    ...extra,
  });

const short = (p) => `${p.hold ? 'HOLD: ' : ''}${words(p.people)}, ${words(p.aid)}`;
/** "two, sling lift" a task, by day or by night. */
export const plans = (input, when = 'day') => planStay(input)[when].map((p) => [p.task, short(p)]);
/** What differs from the plan of the same person without it; tasks that read alike in one row. */
export function differs(input, from, { when = 'day', rules }) {
  const before = planStay(from)[when];
  const alike = new Map();
  for (const [i, p] of planStay(input)[when].entries()) {
    const because = p.because.filter((b) => rules.includes(b.rule)).map((b) => b.words);
    const cautions = p.cautions.filter((c) => !before[i].cautions.includes(c));
    const said = [...new Set([...because, ...cautions])];
    if (short(p) === short(before[i]) && said.length === 0) continue;
    const rest = [short(before[i]), short(p), said.join('; ') || '-'];
    const key = JSON.stringify(rest);
    alike.set(key, [...(alike.get(key) ?? []), words(p.task)]);
  }
  return [...alike].map(([key, tasks]) => [tasks.join(', '), ...JSON.parse(key)]);
}
