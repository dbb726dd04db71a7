/**
 * What the ward has against what its own ratios ask for, by whose plans need it today. The ratios are the ward's
 * (`aids` in its rules) and say themselves what they stand on; they decide nothing at the bedside.
 */
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ItemKind } from '../values.ts';
import { exact, type Need } from './fit.ts';

export interface Ratio {
  readonly of: 'lift' | 'standing-aid' | 'sling';
  /** Pieces on the list. */
  readonly have: number;
  /** People whose day plan asks for it. */
  readonly people: number;
  /** Pieces that the ratio asks for. */
  readonly wanted: number;
  readonly source: string;
}

/** @param needs what each stay's plan asks of the list, each need once a stay */
export function ratiosOf(
  kinds: readonly ItemKind[],
  needs: readonly (readonly Need[])[],
  rules: RulesDocument['aids'],
): Ratio[] {
  const have = (...of: readonly ItemKind[]) => kinds.filter((kind) => of.includes(kind)).length;
  const people = (need: Need) => needs.filter((all) => all.includes(need)).length;
  const lifted = people('lift-and-sling');
  const stood = people('standing-aid');
  return [
    {
      of: 'lift',
      have: have('floor-lift', 'ceiling-lift'),
      people: lifted,
      wanted: Math.ceil(lifted / rules.peoplePerLift.value),
      source: rules.peoplePerLift.source,
    },
    {
      of: 'standing-aid',
      have: have('standing-aid'),
      people: stood,
      wanted: Math.ceil(stood / rules.peoplePerStandingAid.value),
      source: rules.peoplePerStandingAid.source,
    },
    {
      of: 'sling',
      have: have('sling'),
      people: lifted,
      // A binary remainder is no sling: 25 times 2.2 is 55.
      wanted: Math.ceil(exact(lifted * rules.slingsPerPerson.value)),
      source: rules.slingsPerPerson.source,
    },
  ];
}
