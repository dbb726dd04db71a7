// A ward with every bed taken, checked and with a goal for today, people named for the day and equipment that can be
// used, entered by its own API: what a day plan is made for. A third of the people are lifted. Nobody in it is real.
import { randomBytes } from 'node:crypto';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { command, post } from './tap-load.mjs';

const HOUR = 3_600_000;
/** A zone in which it is eight in the morning now: at night nobody is planned to get up. */
function zoneOfMorning() {
  const ahead = ((8 - new Date().getUTCHours() + 36) % 24) - 12;
  return ahead === 0 ? 'Etc/GMT' : `Etc/GMT${ahead > 0 ? '-' : '+'}${Math.abs(ahead)}`;
}

function check(stay, upTo) {
  const at = new Date().toISOString();
  const last = DEFAULT_PROTOCOL.stages.findIndex(({ id }) => id === upTo);
  return {
    stay,
    protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
    depth: 'full',
    stages: DEFAULT_PROTOCOL.stages.slice(0, last + 1).map((stage) => ({
      stage: stage.id,
      outcome: 'met',
      how: 'free',
      people: 1,
      findings: stage.parts.flatMap((part) =>
        (part.sided ? ['left', 'right'] : [undefined]).map((side) => ({
          part: part.id,
          ...(side ? { side } : {}),
          result: 'met',
        })),
      ),
      symptom: false,
      at,
    })),
    readings: [1, 3].map((minute) => ({
      kind: 'pressure',
      posture: 'standing',
      minute,
      systolic: 128,
      diastolic: 74,
      at,
    })),
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
  };
}

const items = (lifts, slings) => [
  ...Array.from({ length: lifts }, (_, n) => ({
    item: `lift-${n + 1}`,
    is: {
      label: `Lift ${n + 1}`, kind: 'floor-lift', model: 'A', powered: true, safeLoadKg: 200, attachment: 'loops',
      inspectionDue: '2099-01-01', home: 'Store',
    },
  })),
  ...Array.from({ length: slings }, (_, n) => ({
    item: `sling-${n + 1}`,
    is: {
      label: `Sling ${n + 1}`, kind: 'sling', model: 'B', style: 'whole-body', safeLoadKg: 200, attachment: 'loops',
      fitsFromKg: 40, fitsToKg: 120, worksWithModels: ['A'], inspectionDue: '2099-01-01', home: 'Store',
    },
  })),
]; // prettier-ignore

const as = (staff) => (staff ? { 'x-footboard-staff': staff } : {});

/** @returns the ward, a charge nurse of it, and how many visits its day asks for */
export async function fullWard(url, count) {
  const ward = `w-${randomBytes(4).toString('hex')}`;
  const tell = (name, data, staff = 'charge-1') =>
    post(url, `/api/wards/${ward}/commands/${name}`, command(data), as(staff));
  const beds = Array.from({ length: count }, (_, n) => ({
    bed: `b${n}`,
    label: `${n + 1}`,
    bay: `Bay ${Math.floor(n / 6) + 1}`,
  }));
  await tell('set-up-ward', { name: `Ward ${ward}`, zone: zoneOfMorning(), beds }, null);
  const staff = [
    ['charge-1', 'charge-nurse'],
    ...Array.from({ length: 5 }, (_, n) => [`nurse-${n + 1}`, 'nurse']),
    ...Array.from({ length: 7 }, (_, n) => [`aide-${n + 1}`, 'aide']),
  ];
  for (const [who, role] of staff)
    await tell(
      'add-staff-member',
      { staff: who, name: `Invented ${who}`, role },
      who === 'charge-1' ? null : undefined,
    );
  for (const { item, is } of items(4, 14)) {
    await tell('add-item', { item, is });
    await tell('see-item', { item, place: 'Store' });
    await tell('record-cleaning', { item, clean: true });
    if (is.powered) await tell('read-battery', { item, band: 'full' });
  }
  for (const [n, { bed }] of beds.entries()) {
    const stay = `${ward}-${bed}`;
    const lifted = n % 3 === 2;
    const weight = { kg: 55 + n, how: 'measured' };
    await tell('begin-stay', { stay, person: `p-${stay}`, bed, from: 'home', weight });
    await tell('record-assessment', check(stay, lifted ? 'upright' : 'walk'));
    const goal = lifted ? { activity: 'lifted-to-chair', timesUp: 2 } : { activity: 'walk', timesUp: 3 };
    await tell('set-goal', { stay, goal });
  }
  const now = Date.now();
  const times = {
    from: new Date(now - HOUR / 2).toISOString(),
    until: new Date(now + 9 * HOUR).toISOString(),
  };
  await tell('set-people-on', {
    people: staff.slice(1).map(([who]) => ({ staff: who, ...times, breaks: [] })),
  });
  const answer = await fetch(`${url}/api/wards/${ward}/day-plan`, { headers: as('charge-1') });
  const { visits } = await answer.json();
  if (visits.length < count) throw new Error(`the day asks for ${visits.length} visits only`);
  return { ward, staff: 'charge-1', visits: visits.length };
}
