import { describe, expect, it } from 'vitest';
import { calibrate, finishedClub, type Club, type FinishedClub } from '../../../src/core/index';
import { aJob } from '../bench/jobs';
import { aGrip, P, valueOf } from '../make';

/** What Stock says of the item: 60 g, 4.2 in. In truth it balances at 4.6 in, and a layer weighs 1.9 g. */
const job = aJob(
  Array.from({ length: 10 }, (_, at): Partial<Club> => ({
    layers: at % 4,
    lowerLayers: at % 3,
    oldGripGrams: 50,
    newGripGrams: at < 5 ? 58 + at : undefined,
    lengthChangeInches: at === 2 ? 0.5 : 0,
    plugGrams: at === 2 ? 6 : 0,
    lengthInches: 36 + at,
    bareReading: at === 9 ? 44 : undefined,
    bareGrams: at === 9 ? 380 : undefined,
    massGrams: at === 9 ? undefined : 420,
  })),
);

/** What a scale shows of each club, bare and finished, by moments. */
function measure(at: number): { bareReading: number; bareGrams: number; reading: number; massGrams: number } {
  const club = job.input.clubs[at]!;
  const plan = job.plan.clubs[at]!;
  const bare = { bareReading: 44, bareGrams: at === 9 ? 380 : 330 + 9 * at };
  const grip = club.newGripGrams ?? 60;
  const full = plan.layers * 1.9;
  const lower = (club.lowerLayers * 1.9 * 5.5) / 10.5;
  const strip = 21 * 0.00064516 * 133;
  const weight = plan.remedy?.grams ?? 0;
  const moved =
    bare.bareGrams * (0.125 + club.lengthChangeInches) +
    grip * (4.6 - 14) +
    (full + strip) * (5.25 - 14) +
    lower * (7.75 - 14) +
    club.plugGrams * (1 - 14) +
    weight * ((plan.remedy?.inches ?? 0) - 14);
  return {
    ...bare,
    reading: 44 + moved / P,
    massGrams: bare.bareGrams + grip + full + lower + strip + club.plugGrams + weight,
  };
}

const finishedAt = (at: number, measured: Parameters<typeof finishedClub>[2]): FinishedClub | undefined =>
  finishedClub(job.plan.clubs[at]!, job.input.clubs[at]!, measured, job.input);

describe('check-ins of a planned job', () => {
  it('give back the shop’s truth, weight, length changes and lower-hand tape taken out', () => {
    expect(job.plan.clubs.some(({ remedy }) => (remedy?.grams ?? 0) > 0)).toBe(true);
    const finished = job.plan.clubs.flatMap((_, at) => finishedAt(at, measure(at)) ?? []);
    expect(finished).toHaveLength(10);
    const found = calibrate({ finished, stock: job.input.stock, settings: job.input.settings });
    // five loose grips were weighed, which is enough
    expect(valueOf(found.layer)).toMatchObject({ value: expect.closeTo(1.9, 8), pairs: 5, from: 'looseGrips' });
    expect(valueOf(found.balance[0]!.found)).toMatchObject({ value: expect.closeTo(4.6, 8), pairs: 10, now: 4.2 });
  });

  it('a club stripped before it was planned needs no bare measurements at the check-in', () => {
    const { reading, massGrams } = measure(9);
    expect(finishedAt(9, { reading, massGrams })).toMatchObject({ bareReading: 44, bareGrams: 380 });
  });

  it.each(['bareReading', 'bareGrams', 'reading', 'massGrams'] as const)('nothing without %s', (missing) => {
    expect(finishedAt(0, { ...measure(0), [missing]: undefined })).toBeUndefined();
  });

  it('nothing of a club without a grip', () => {
    const { plan, input } = aJob([{ newItem: undefined }]);
    expect(finishedClub(plan.clubs[0]!, input.clubs[0]!, measure(0), input)).toBeUndefined();
  });

  it('a cap that Stock does not give is not known', () => {
    const { plan, input } = aJob([{}], { stock: [aGrip({ capInches: undefined, lengthInches: undefined })] });
    const club = finishedClub(plan.clubs[0]!, input.clubs[0]!, measure(0), input);
    expect(club).toMatchObject({ capInches: undefined, gripInches: undefined, tapedInches: 10.5 });
  });
});
