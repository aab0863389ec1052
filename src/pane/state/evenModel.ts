/** Evening out a set: what is wanted of each group, what becomes of the set, and the choices to take over. Pure. */
import {
  evenCosts,
  evenTargets,
  formatReading,
  heldEven,
  parseReading,
  planSet,
  type Club,
  type EvenCost,
  type EvenGroup,
  type EvenGroupPlan,
  type EvenPlan,
  type EvenWanted,
  type PlanInput,
  type SetPlan,
} from '../../core/index';
import type { ClubChoices } from '../../workbook/choices';
import type { EvenForm } from './tools';

export interface EvenGroupModel {
  readonly even: EvenGroupPlan;
  /** Points as they arrived. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly costs: readonly EvenCost[];
}

export interface EvenModel {
  readonly even: EvenPlan;
  readonly groups: readonly EvenGroupModel[];
  /** The set with the targets, groups that stay as in the sheet among it. */
  readonly plan: SetPlan;
  /** By row; empty where every group stays as it is. */
  readonly taken: ReadonlyMap<number, ClubChoices>;
  /** Groups whose own reading is none. */
  readonly faults: readonly EvenGroup[];
}

function wantedOf(form: EvenForm): { readonly wanted: EvenWanted; readonly faults: readonly EvenGroup[] } {
  const faults: EvenGroup[] = [];
  const values: Partial<Record<EvenGroup, number>> = {};
  for (const group of ['woods', 'irons', 'wedges'] as const) {
    const text = form.value[group].trim();
    if (form.by[group] !== 'one' || text === '') continue;
    const points = parseReading(text);
    if (points.ok) values[group] = points.value;
    else faults.push(group);
  }
  const choice = (group: EvenGroup) => (form.by[group] === 'sheet' ? 'own' : form.by[group]);
  return { wanted: { woods: choice('woods'), irons: choice('irons'), wedges: choice('wedges'), values }, faults };
}

/** What a club gets: a target as written, or to read as it did. */
function choicesFor(group: EvenGroupPlan, target: number): ClubChoices {
  if (group.choice === 'own') return { hold: 'As it was', target: null };
  const reading = formatReading(target, 1);
  return { hold: 'Target', target: reading.ok ? reading.value : target };
}

export function evenModel(input: PlanInput, form: EvenForm): EvenModel {
  const { wanted, faults } = wantedOf(form);
  const even = evenTargets(input.clubs, wanted, input.settings);
  const moved = even.groups.filter(({ group }) => form.by[group] !== 'sheet');
  const groupOf = new Map(moved.flatMap((group) => group.clubs.map(({ row }) => [row, group] as const)));
  const held = heldEven(input.clubs, even);
  const clubs = input.clubs.map((club, at): Club => (groupOf.has(club.row) ? (held[at] ?? club) : club));
  const taken = new Map<number, ClubChoices>();
  for (const [row, target] of even.targets) {
    const group = groupOf.get(row);
    if (group) taken.set(row, choicesFor(group, target));
  }
  const costs = evenCosts(input, wanted.values);
  const groups = even.groups.map((group): EvenGroupModel => {
    const readings = group.clubs.flatMap(({ reading }) => reading ?? []);
    return {
      even: group,
      low: readings.length ? Math.min(...readings) : undefined,
      high: readings.length ? Math.max(...readings) : undefined,
      costs: costs.filter((cost) => cost.group === group.group && cost.job === group.job),
    };
  });
  return { even, groups, plan: planSet({ ...input, clubs }), taken, faults };
}
