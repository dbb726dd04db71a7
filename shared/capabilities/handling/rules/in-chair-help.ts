/** Moving up in a chair: OSHA 3182 figure 5, and what we add to it. */
import type { Demand } from './demand.ts';
import { caution, demand, factsOf, fromRow, told } from './demand.ts';
import { IN_CHAIR, KNEES_CAUTION, RECLINES_CAUTION } from './tables/in-chair.ts';
import { rowFor } from './tables/table.ts';
import { armsPush, cooperates } from './transfer-help.ts';
import type { PlanInput } from './types.ts';

/**
 * The row of a chair that does not recline, the stricter. A seated aid needs sitting balance cleared
 * today, else a sling lift (before the tables, c). Nobody alone moves a person from the bariatric
 * weight up or of unknown weight (ours, practice).
 */
export function inChairHelp(input: PlanInput): Demand[] {
  const c = input.capability;
  const heavy = c.weightKg === null || c.weightKg >= input.rules.handling.bariatricFromKg.value;
  const facts = factsOf(c, 'capability/assists', 'capability/arm-by-order');
  const row = rowFor(IN_CHAIR, {
    assists: c.assists,
    arms: armsPush(input),
    reclines: false,
    cooperative: cooperates(c),
  });
  const out = [fromRow(IN_CHAIR, row, facts), ...told(c, 'capability/assists', 'capability/arm-by-order')];
  if (row.options[0].aid === 'seated-transfer-aid' && !c.sittingBalance) {
    const words = 'A seated aid needs sitting balance cleared today: sling lift instead';
    const edge = c.standings.get('edge')?.fact.id;
    out.push(demand('before-the-tables/fit-for-the-aid', words, [edge], 'two', 'sling-lift'));
    out.push(...told(c, 'capability/sitting-balance'));
  }
  const byOne = row.options[0].people[1] === 'one';
  if (byOne) out.push(caution('osha-3182/figure-5', KNEES_CAUTION, []));
  if (byOne && heavy) {
    const words = 'Weight unknown, or from the bariatric weight up: nobody pushes alone, two people';
    out.push(demand('ours/in-chair-weight', words, [input.weight?.fact ?? input.arrival], 'two'));
  }
  if (c.assists === 'not' && !heavy) out.push(caution('osha-3182/figure-5', RECLINES_CAUTION, []));
  return out;
}
