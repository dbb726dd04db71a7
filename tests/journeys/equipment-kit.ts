/** A lift, a sling that works with it, and who looks after both: what the journeys of equipment share. */
import type { Clock } from '@footboard/server/platform/clock';
import { openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

export const aLift = (is: object = {}) => ({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  attachment: 'loops',
  inspectionDue: '2027-01-01',
  home: 'Store',
  ...is,
});
export const aSling = (is: object = {}) => ({
  label: 'Sling 1',
  kind: 'sling',
  model: 'B',
  style: 'whole-body',
  safeLoadKg: 200,
  fitsFromKg: 50,
  fitsToKg: 100,
  worksWithModels: ['A'],
  inspectionDue: '2027-01-01',
  home: 'Hook 3',
  ...is,
});

/** Ward Alder with Hana, its handling coordinator. */
export async function openEquipmentWard(clock: Clock): Promise<Ward> {
  const ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' });
  return ward;
}

/** An aide saw it in the store, clean and, where it has a battery, charged: now it counts. */
export async function seenReady(ward: Ward, item: string, battery = true): Promise<void> {
  await ward.enter('see-item', { item, place: 'Store' }, 'ada');
  await ward.enter('record-cleaning', { item, clean: true }, 'ada');
  if (battery) await ward.enter('read-battery', { item, band: 'full' }, 'ada');
}
