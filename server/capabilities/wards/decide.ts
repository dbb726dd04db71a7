/** The ward itself: its clock, its beds, and the documents it publishes. */
import { checkProtocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import * as commands from '@footboard/shared/capabilities/wards/commands';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import * as events from '@footboard/shared/capabilities/wards/events';
import { rulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { faultsOfRules } from '@footboard/shared/capabilities/wards/rules/rules-faults';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { sayAt } from '../stays/standing.ts';
import { guardOf, knownBed } from './beds.ts';

const wardStream = (context: DecideContext) => streamKey('ward', context.wardId);
/** underPolicy has asked already whether there is a ward. */
const wardIn = (context: DecideContext): WardState => context.ward!;
const sameLabel = (a: string, b: string) => a.toLocaleLowerCase('en') === b.toLocaleLowerCase('en');

const labelUsed = (label: string, field: string): Refusal =>
  refuse(
    'bed-label-used',
    `there is already a bed labelled ${label}`,
    'Give each bed its own label, as it is written over the bed.',
    field,
  );

const setUpWard = decider({
  command: commands.setUpWard,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    if (context.ward) {
      return refuse(
        'ward-exists',
        `this ward is already set up as ${context.ward.name}`,
        'Change the ward instead, or choose another id for a new one.',
      );
    }
    for (const [i, bed] of data.beds.entries()) {
      const before = data.beds.slice(0, i);
      if (before.some((b) => b.bed === bed.bed)) {
        return refuse(
          'bed-known',
          `two beds have the id ${bed.bed}`,
          'Give each bed its own id.',
          `/beds/${i}/bed`,
        );
      }
      if (before.some((b) => sameLabel(b.label, bed.label))) return labelUsed(bed.label, `/beds/${i}/label`);
    }
    const { beds, ...ward } = data;
    const stream = wardStream(context);
    return accept(
      newEvent(events.wardSetUp, stream, ward),
      ...beds.map((bed) => newEvent(events.bedAdded, stream, bed)),
    );
  },
});

/** A setting of several parts, as the panel, is the same when each of them is, in whatever order it was stored. */
const sameValue = (a: unknown, b: unknown): boolean =>
  typeof a === 'object' && typeof b === 'object' && a !== null && b !== null
    ? Object.keys({ ...a, ...b }).every(
        (key) => (a as Record<string, unknown>)[key] === (b as Record<string, unknown>)[key],
      )
    : a === b;

const changeWard = decider({
  command: commands.changeWard,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const ward = wardIn(context);
    const changed = Object.fromEntries(
      Object.entries(data).filter(
        ([key, value]) => value !== undefined && !sameValue(ward[key as keyof typeof data], value),
      ),
    ) as PayloadOf<typeof events.wardChanged>;
    if (Object.keys(changed).length === 0) {
      return refuse(
        'nothing-to-change',
        'the ward already says this',
        'Change the name or one of the settings.',
      );
    }
    return accept(newEvent(events.wardChanged, wardStream(context), changed));
  },
});

const addBed = decider({
  command: commands.addBed,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const everAdded = context
      .slice(wardStream(context))
      .events.some(
        (e) => e.type === 'bed-added' && (e.payload as PayloadOf<typeof events.bedAdded>).bed === data.bed,
      );
    if (everAdded) {
      return refuse(
        'bed-known',
        `the id ${data.bed} is or was a bed of this ward`,
        'Give a new bed a new id: history stays with the old one.',
        '/bed',
      );
    }
    if (wardIn(context).beds.some((b) => sameLabel(b.label, data.label)))
      return labelUsed(data.label, '/label');
    return accept(newEvent(events.bedAdded, wardStream(context), data));
  },
});

const changeBed = decider({
  command: commands.changeBed,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const ward = wardIn(context);
    const bed = knownBed(ward, data.bed, '/bed');
    if ('refused' in bed) return bed;
    const { label, bay, ceilingTrack } = data;
    if (label !== undefined && ward.beds.some((b) => b.bed !== data.bed && sameLabel(b.label, label)))
      return labelUsed(label, '/label');
    const changed = {
      ...(label === undefined || label === bed.label ? {} : { label }),
      ...(bay === undefined || bay === bed.bay ? {} : { bay }),
      ...(ceilingTrack === undefined || ceilingTrack === bed.ceilingTrack ? {} : { ceilingTrack }),
    };
    if (Object.keys(changed).length === 0) {
      return refuse(
        'nothing-to-change',
        `bed ${bed.label} already says this`,
        'Change its label, bay or ceiling track.',
      );
    }
    return accept(newEvent(events.bedChanged, wardStream(context), { bed: data.bed, ...changed }));
  },
});

const closeBed = decider({
  command: commands.closeBed,
  reads: (data, ward) => [{ ward, stream: streamKey('ward', ward) }, guardOf(ward, data.bed)],
  decide: (data, context) => {
    const bed = knownBed(wardIn(context), data.bed, '/bed');
    if ('refused' in bed) return bed;
    if (context.occupant(data.bed) !== null) {
      return refuse(
        'bed-occupied',
        `someone is in bed ${bed.label}`,
        'Move the person or end the stay first; then close the bed.',
        '/bed',
      );
    }
    const last = context.slice(streamKey('bed', data.bed)).events.at(-1);
    if (last && context.occurred < last.occurred) {
      return refuse(
        'bed-taken-then',
        `bed ${bed.label} was freed ${sayAt(context, last.occurred)}; at ${sayAt(context, context.occurred)} someone was in it`,
        'Check the time: a bed is closed once it is empty.',
        '/bed',
      );
    }
    return accept(
      newEvent(events.bedClosed, wardStream(context), { bed: data.bed }),
      newEvent(events.bedWithdrawn, streamKey('bed', data.bed), { bed: data.bed }),
    );
  },
});

const notNext = (what: string, given: number, next: number): Refusal =>
  refuse(
    'version-not-next',
    `the next version of ${what} is ${next}, this one says ${given}`,
    `Base it on the version in force and write version ${next}.`,
    '/document/version',
  );

const publishProtocol = decider({
  command: commands.publishProtocol,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const checked = checkProtocol(data.document);
    if ('faults' in checked) {
      return refuse(
        'protocol-faulty',
        checked.faults.map((f) => `${f.place}: ${f.reason}`).join('; '),
        'Correct the document and publish it again. Nothing was changed.',
        `/document${checked.faults[0]?.place ?? ''}`,
      );
    }
    const { id, version } = checked.ok;
    const newest = Math.max(
      0,
      ...wardIn(context)
        .protocols.filter((p) => p.id === id)
        .map((p) => p.version),
    );
    if (version !== newest + 1) return notNext(`the protocol ${id}`, version, newest + 1);
    return accept(
      newEvent(events.protocolPublished, wardStream(context), { id, version, document: data.document }),
    );
  },
});

const publishRules = decider({
  command: commands.publishRules,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: (data, context) => {
    const checked = rulesDocument.safeParse(data.document);
    if (!checked.success) {
      const { issues } = checked.error;
      return refuse(
        'rules-faulty',
        issues.map((i) => `${i.path.join('.')}: ${i.message}`).join('; '),
        'Correct the document and publish it again. Nothing was changed.',
        ['/document', ...(issues[0]?.path ?? []).map(String)].join('/'),
      );
    }
    const faults = faultsOfRules(checked.data);
    if (faults.length > 0) {
      return refuse(
        'rules-faulty',
        faults.map((f) => `${f.place}: ${f.reason}`).join('; '),
        'Correct the document and publish it again. Nothing was changed.',
        `/document${faults[0]!.place}`,
      );
    }
    const next = rulesOf(wardIn(context)).version + 1;
    if (checked.data.version !== next) return notNext("the ward's rules", checked.data.version, next);
    return accept(
      newEvent(events.rulesPublished, wardStream(context), {
        version: checked.data.version,
        document: data.document,
      }),
    );
  },
});

export const deciders = underPolicy([
  setUpWard,
  changeWard,
  addBed,
  changeBed,
  closeBed,
  publishProtocol,
  publishRules,
]);
