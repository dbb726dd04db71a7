/** Protocols of invented wards, longer and shorter than the default, and records under them. */
import { toIso } from '../../../kernel/times.ts';
import type { Finding, StageRecord } from '../values.ts';
import type { Assessment } from './judge-stage.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import type { Protocol, ProtocolPart, ProtocolStage } from './protocol-document.ts';

const source = 'invented for a test';
const part = (id: string, extra: Partial<ProtocolPart> = {}): ProtocolPart => ({
  id,
  says: `The part ${id}`,
  sided: false,
  gate: 'required',
  source,
  ...extra,
});
const sided = (id: string, shows: ProtocolPart['shows'], gate: ProtocolPart['gate'] = 'informs') =>
  part(id, { sided: true, gate, ...(shows ? { shows } : {}) });
const stage = (
  id: string,
  word: string | null,
  shows: ProtocolStage['shows'],
  parts: ProtocolPart[],
  extra: Partial<ProtocolStage> = {},
): ProtocolStage => ({
  id,
  word,
  says: `The stage ${id}`,
  shows,
  parts,
  securedBy: [],
  firstTimeSecured: false,
  symptomStops: true,
  oneLegRoute: false,
  source,
  ...extra,
});
const document = (id: string, lowestWord: string, stages: ProtocolStage[]): Protocol => ({
  ...structuredClone(DEFAULT_PROTOCOL),
  id,
  version: 1,
  name: `The protocol ${id}`,
  source,
  owner: 'an invented clinician',
  lowestWord,
  stages,
});

const LOOK = stage('look', null, 'clear', [part('fit-to-begin')]);
const SIT_UP = stage('sit-up', 'Sits up', 'upright', [
  sided('knee-straight', 'leg-against-gravity', 'one-side'),
  sided('thigh-presses', 'leg-against-resistance'),
  sided('fist', 'grip'),
  sided('elbow-straight', 'arm-pushes'),
]);
const SIDE = stage('side', 'At the side', 'edge', [
  part('turns-out', { shows: 'comes-to-edge' }),
  part('sits-alone', { shows: 'sits-unheld' }),
]);

/** Three stages: a ward where nobody stands in the check. */
export const SHORT = document('short', 'Lying', [LOOK, SIT_UP, SIDE]);

/** Nine stages, three of them without a meaning for the plan. */
export const LONG = document('long', 'Lying', [
  LOOK,
  stage('roll', 'Rolls', null, [sided('rolls-to', undefined, 'required')]),
  SIT_UP,
  SIDE,
  stage('lean', 'Leans', null, [part('leans-forward')]),
  stage('rise', 'On the feet', 'stand', [part('gets-up'), sided('foot-carries', 'leg-bears', 'required')], {
    securedBy: ['sling', 'standing-aid'],
    oneLegRoute: true,
  }),
  stage('step', 'Steps', 'turn', [part('steps-round')], { securedBy: ['two-people'] }),
  stage('go', 'Goes', 'walk', [part('goes-and-comes-back')], { securedBy: ['sling'] }),
  stage('stairs', 'Stairs', null, [part('three-stairs')]),
]);

export const findingsMet = (of: ProtocolStage): Finding[] =>
  of.parts.flatMap((p): Finding[] =>
    p.sided
      ? (['left', 'right'] as const).map((side) => ({ part: p.id, side, result: 'met' }))
      : [{ part: p.id, result: 'met' }],
  );

/** A check under a protocol that clears every stage up to `last`; `says` changes single stages. */
export function checkUnder(
  protocol: Protocol,
  last: string,
  at: number,
  says: Readonly<Record<string, Partial<StageRecord>>> = {},
): Assessment {
  const upTo = protocol.stages.findIndex((s) => s.id === last);
  return {
    protocol: { id: protocol.id, version: protocol.version },
    depth: 'full',
    stages: protocol.stages.slice(0, upTo + 1).map((s) => ({
      stage: s.id,
      outcome: 'met',
      how: 'free',
      people: 0,
      findings: findingsMet(s),
      symptom: false,
      at: toIso(at),
      ...says[s.id],
    })),
    readings: [],
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    wears: [],
    answers: [],
    firstTimeUp: false,
  };
}

/** The default protocol with every id and word changed, and nothing else. */
export const RENAMED: Protocol = {
  ...structuredClone(DEFAULT_PROTOCOL),
  id: 'renamed',
  version: 7,
  lowestWord: 'Words zero',
  stages: DEFAULT_PROTOCOL.stages.map((s, i) => ({
    ...structuredClone(s),
    id: `stage-${i}-renamed`,
    word: s.word === null ? null : `Words ${i}`,
    says: `Says ${i}`,
    parts: s.parts.map((p) => ({
      ...structuredClone(p),
      id: `${p.id}-too`,
      says: `Other words for ${p.id}`,
    })),
  })),
};

/** A record under the default as it would be under the renamed protocol; any other as it is. */
export function renamed<T extends Partial<Pick<Assessment, 'protocol' | 'stages'>>>(data: T): T {
  if (data.protocol?.id !== DEFAULT_PROTOCOL.id || data.protocol.version !== DEFAULT_PROTOCOL.version)
    return data;
  return {
    ...data,
    protocol: { id: RENAMED.id, version: RENAMED.version },
    stages: data.stages!.map((s) => {
      const i = DEFAULT_PROTOCOL.stages.findIndex((d) => d.id === s.stage);
      return {
        ...s,
        stage: RENAMED.stages[i]?.id ?? s.stage,
        findings: s.findings.map((f) => ({ ...f, part: `${f.part}-too` })),
      };
    }),
  };
}
