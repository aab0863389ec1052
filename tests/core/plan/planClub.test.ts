import { describe, expect, it } from 'vitest';
import { holdOf, type Club } from '../../../src/core/index';
import { aClub, noteKinds, noteOf, P, planOf, planOne } from '../make';

/** Mass of one layer of 10.5 in and of a two-way strip: area in m² × g/m². */
const LAYER = 21 * 0.00064516 * 130;
const STRIP = 21 * 0.00064516 * 133;

describe('one club on an estimate, ten grams heavier', () => {
  it('reads lighter by 10 × 9.8 g·in', () => {
    const plan = planOne();
    expect(plan.basis).toBe('estimate');
    expect(plan.readingBefore).toBe(32);
    expect(plan.shift?.grip).toBeCloseTo(-98 / P, 10); // −1.975
    expect(plan.shift?.total).toBeCloseTo(-98 / P, 10);
    expect(plan.readingGripped).toBeCloseTo(32 - 98 / P, 10);
    expect(plan.gapPoints).toBeCloseTo(98 / P, 10);
  });

  it('is out by more than its ±, and lead tape at the head puts it right', () => {
    const plan = planOne();
    expect(plan.verdict).toBe('out');
    // 98 g·in over 23 in is 4.26 g, in steps of ½ g 4.5 g, which move 103.5 g·in
    expect(plan.remedy).toEqual({
      exactGrams: expect.closeTo(98 / 23, 9),
      grams: 4.5,
      way: 'Lead tape',
      end: 'head',
      inches: 37,
      gripOff: false,
      none: undefined,
      overLimit: false,
    });
    expect(plan.readingAfter).toBeCloseTo(32 + 5.5 / P, 10);
    expect(plan.verdictAfter).toBe('likely');
  });

  it('weighs 10 g of grip and 4.5 g of lead more', () => {
    const plan = planOne();
    expect(plan.massBeforeGrams).toBe(420);
    expect(plan.fittedBeforeGrams).toBe(50);
    expect(plan.fittedAfterGrams).toBe(60);
    expect(plan.fittedChangeGrams).toBe(10);
    expect(plan.massAfterGrams).toBeCloseTo(434.5, 10);
  });

  it('gains inertia: 10 × 4.2² + 4.5 × 37² g·in²', () => {
    const plan = planOne();
    expect(plan.inertiaChange).toBeCloseTo((176.4 + 6160.5) * 0.0064516, 8);
  });

  it('says what it is, what it takes and that nothing is wrong', () => {
    const plan = planOne();
    expect(plan).toMatchObject({
      row: 1,
      name: '7 iron',
      kind: 'iron',
      item: 'G',
      layers: 0,
      layersSolved: false,
      lowerLayers: 0,
      hold: 'asArrived',
      heldReading: 32,
      tolerancePoints: 1,
      growth: 'volume',
      lengthAfterInches: 37,
      tapeInches: 0,
      twoWayInches: 10.5,
      breaches: [],
      notes: [],
    });
    expect(plan.grip?.item).toBe('G');
  });
});

describe('what is known of the old grip', () => {
  it('weighed: said so, and there is a mass', () => {
    expect(planOne({ oldMassFrom: 'weighed' }).basis).toBe('weighed');
    expect(planOne({ oldMassFrom: 'alike' }).basis).toBe('alike');
    expect(planOne({ oldMassFrom: 'weighed' }).readingGripped).toBe(planOne().readingGripped);
  });

  it('said to be weighed without a mass: what Stock says is an estimate', () => {
    const old = { item: 'OLD', gripGrams: 50 };
    const { clubs } = planOf([aClub({ oldItem: 'old', oldGripGrams: undefined, oldMassFrom: 'weighed' })], {
      stock: [{ ...planOne().grip!, ...old }, planOne().grip!],
    });
    expect(clubs[0]?.basis).toBe('estimate');
    expect(clubs[0]?.fittedBeforeGrams).toBe(50);
  });

  it('bare: the bare reading and what goes on', () => {
    // on goes 60 g at 4.2 in, a strip in the middle of 10.5 in, and the body moves out by the whole cap of ⅛ in
    const plan = planOne({ bareReading: 44, bareGrams: 368 });
    const gripped = 44 + (60 * -9.8 + STRIP * -8.75 + 368 * 0.125) / P;
    expect(plan.basis).toBe('bare');
    expect(plan.readingGripped).toBeCloseTo(gripped, 10);
    expect(plan.gapPoints).toBeCloseTo(32 - gripped, 10);
    expect(plan.massAfterGrams).toBeCloseTo(368 + 60 + STRIP + (plan.remedy?.grams ?? NaN), 10);
    expect(plan.fittedBeforeGrams).toBeCloseTo(420 - 368 - STRIP, 10);
  });

  it('bare: the parts still add up, the grip taking what is left of the measured change', () => {
    const plan = planOne({ bareReading: 44, bareGrams: 368, layers: 2, oldLayers: 1, lengthChangeInches: 0.25 });
    const { shift } = plan;
    if (!shift) throw new Error('it was read as it arrived');
    expect(shift.tape).toBeCloseTo((LAYER * -8.75) / P, 10);
    expect(shift.twoWay).toBeCloseTo(0, 12);
    expect(shift.length).toBeCloseTo((368 * 0.25) / P, 10);
    expect(shift.grip + shift.tape + shift.twoWay + shift.cap + shift.length + shift.buttWeight).toBeCloseTo(
      shift.total,
      10,
    );
    expect(shift.total).toBeCloseTo((plan.readingGripped ?? NaN) - 32, 10);
  });

  it('bare, with tape at both hands, another length and a plug', () => {
    const plan = planOne({
      bareReading: 44,
      bareGrams: 368,
      layers: 2,
      lowerLayers: 2,
      lengthChangeInches: 0.5,
      plugGrams: 6,
    });
    const lower = 2 * 11 * 0.00064516 * 130;
    const moments = 60 * -9.8 + (2 * LAYER + STRIP) * -8.75 + lower * -6.25 + 368 * 0.625 + 6 * -13;
    expect(plan.readingGripped).toBeCloseTo(44 + moments / P, 10);
  });

  it('bare: every part but the grip is reckoned, the grip is the rest', () => {
    const plan = planOne(
      {
        bareReading: 44,
        bareGrams: 368,
        oldLayers: 1,
        buttWeightGrams: 12,
        buttWeightLeaves: true,
        lengthChangeInches: 0.5,
      },
      { lengthInches: 12, capInches: 0.2 },
    );
    const { shift } = plan;
    if (!shift) throw new Error('it was read as it arrived');
    const parts = [shift.tape, shift.twoWay, shift.cap, shift.length, shift.buttWeight];
    for (const part of parts) expect(Math.abs(part)).toBeGreaterThan(0.01);
    expect(shift.grip).toBeCloseTo(shift.total - parts.reduce((sum, part) => sum + part), 10);
    expect(plan.fittedBeforeGrams).toBeCloseTo(420 - 368 - STRIP - 12, 10); // the weight is neither grip nor tape
  });

  it('bare, and nothing about the old grip is needed', () => {
    const plan = planOne({ bareReading: 44, bareGrams: 368, oldGripGrams: undefined, oldItem: undefined });
    expect(plan.readingGripped).toBeCloseTo(planOne({ bareReading: 44, bareGrams: 368 }).readingGripped ?? NaN, 10);
    expect(plan.shift?.total).toBeCloseTo((plan.readingGripped ?? NaN) - 32, 10);
    expect(plan.verdict).not.toBe('unknown');
    expect(noteKinds(plan)).toEqual(['taught']);
  });

  it('bare but not weighed: the cap pushes an estimate of the body, which is noted', () => {
    const plan = planOne({ bareReading: 44 });
    const body = 420 - 50 - STRIP;
    expect(plan.readingGripped).toBeCloseTo(44 + (60 * -9.8 + STRIP * -8.75 + body * 0.125) / P, 10);
    expect(noteKinds(plan)).toEqual(['bareMassUnknown']);
    expect(plan.massAfterGrams).toBeCloseTo(body + 60 + STRIP + (plan.remedy?.grams ?? NaN), 10);
  });

  it('bare, weighed neither bare nor whole: a typical body of 374 g (practice)', () => {
    const plan = planOne({ bareReading: 44, massGrams: undefined });
    expect(plan.readingGripped).toBeCloseTo(44 + (60 * -9.8 + STRIP * -8.75 + 374 * 0.125) / P, 10);
    expect(plan.massAfterGrams).toBeUndefined();
    expect(plan.inertiaChange).toBeCloseTo(planOne().inertiaChange! - massOf(planOne()) + massOf(plan), 8);
  });

  it('unknown: no change can be told, and a note says what to do', () => {
    const plan = planOne({ oldGripGrams: undefined });
    expect(plan).toMatchObject({
      basis: undefined,
      readingBefore: 32,
      shift: undefined,
      readingGripped: undefined,
      gapPoints: undefined,
      spreadPoints: undefined,
      verdict: 'unknown',
      verdictAfter: 'unknown',
      remedy: undefined,
      readingAfter: undefined,
      fittedBeforeGrams: undefined,
      fittedAfterGrams: 60,
      fittedChangeGrams: undefined,
      massAfterGrams: undefined,
      inertiaChange: undefined,
    });
    expect(noteKinds(plan)).toEqual(['oldGripUnknown']);
  });

  it('comes from Stock where the row is silent: mass, balance point, cap and length', () => {
    const base = planOne().grip!;
    const old = { ...base, item: 'Worn', gripGrams: 52, balanceInches: 4, capInches: 0.2, lengthInches: 9 };
    const club = aClub({
      oldItem: 'WORN',
      oldGripGrams: undefined,
      oldBalanceInches: undefined,
      oldCapInches: undefined,
      oldLayers: 1,
    });
    const [plan] = planOf([club], { stock: [base, old] }).clubs;
    const strip9 = 18 * 0.00064516;
    const body = 420 - 52 - strip9 * 130 - strip9 * 133;
    expect(plan?.shift?.grip).toBeCloseTo((60 * -9.8 - 52 * -10) / P, 10);
    expect(plan?.shift?.tape).toBeCloseTo((-strip9 * 130 * (4.5 - 14)) / P, 10);
    expect(plan?.shift?.twoWay).toBeCloseTo((STRIP * -8.75 - strip9 * 133 * -9.5) / P, 10);
    expect(plan?.shift?.cap).toBeCloseTo((body * -0.075) / P, 10);
    expect(plan?.lengthAfterInches).toBeCloseTo(36.925, 10);
  });

  it('balances at 0.40 of its length where Stock gives only that, else at 4.2 in; its cap is the shop’s habit', () => {
    const base = planOne().grip!;
    const silent = { oldGripGrams: 50, oldBalanceInches: undefined, oldCapInches: undefined };
    const nine = { ...base, item: 'nine', balanceInches: undefined, capInches: undefined, lengthInches: 9 };
    const [known] = planOf([aClub({ ...silent, oldItem: 'nine' })], {
      stock: [base, nine],
      settings: { capInches: 0.1 },
    }).clubs;
    expect(known?.shift?.grip).toBeCloseTo((60 * -9.8 - 50 * (3.6 - 14)) / P, 10);
    expect(known?.lengthAfterInches).toBeCloseTo(37.025, 10);
    const [unknown] = planOf([aClub({ ...silent, oldItem: 'nobody knows' })], { settings: { capInches: 0.1 } }).clubs;
    expect(unknown?.shift?.grip).toBeCloseTo(-98 / P, 10);
    expect(unknown?.lengthAfterInches).toBeCloseTo(37.025, 10);
  });

  it('the row goes before Stock', () => {
    const base = planOne().grip!;
    const other = { ...base, item: 'old', gripGrams: 70, balanceInches: 5, capInches: 0.3 };
    const [plan] = planOf([aClub()], { stock: [base, other] }).clubs;
    expect(plan?.shift?.grip).toBeCloseTo(-98 / P, 10);
    expect(plan?.shift?.cap).toBe(0);
  });
});

function massOf(plan: ReturnType<typeof planOne>): number {
  const { remedy } = plan;
  return (remedy?.grams ?? 0) * (remedy?.inches ?? 0) ** 2 * 0.0064516;
}

describe('the very grip weighed', () => {
  it('goes before its item in Stock: 63 g in place of 60', () => {
    const plan = planOne({ newGripGrams: 63 });
    expect(plan.shift?.grip).toBeCloseTo((-13 * 9.8) / P, 10); // 50 g off, 63 on, 9.8 in from the fulcrum
    expect(plan.fittedAfterGrams).toBeCloseTo(63, 10);
    expect(plan.massAfterGrams).toBeCloseTo(433 + (plan.remedy?.grams ?? NaN), 10);
    expect(plan.grip?.gripGrams).toBe(60); // what Stock says is left alone
  });

  it('does for an item whose mass nobody knows', () => {
    const plan = planOne({ newGripGrams: 63 }, { gripGrams: undefined });
    expect(plan.shift?.grip).toBeCloseTo((-13 * 9.8) / P, 10);
    expect(plan.notes.filter(({ note }) => note === 'issue')).toEqual([]);
  });

  it('from bare, too', () => {
    const bare = { bareReading: 44, bareGrams: 368 };
    const before = planOne(bare).readingGripped ?? NaN;
    expect(planOne({ ...bare, newGripGrams: 63 }).readingGripped).toBeCloseTo(before - (3 * 9.8) / P, 10);
  });
});

describe('what moves the reading', () => {
  it('tape: old layers off, new layers on', () => {
    const plan = planOne({ oldLayers: 1, layers: 3 });
    expect(plan.shift?.tape).toBeCloseTo((2 * LAYER * -8.75) / P, 10);
    expect(plan.fittedBeforeGrams).toBeCloseTo(50 + LAYER, 10);
    expect(plan.fittedAfterGrams).toBeCloseTo(60 + 3 * LAYER, 10);
    expect(plan.tapeInches).toBe(31.5);
  });

  it('two lower-hand layers weigh 1.8 g and move −0.2 point', () => {
    const plan = planOne({ lowerLayers: 2 });
    // from 5 in to 10.5 in: 11 in², balancing at 7.75 in
    const grams = 2 * 11 * 0.00064516 * 130;
    expect(grams).toBeCloseTo(1.845, 3);
    expect(plan.shift?.tape).toBeCloseTo((grams * (7.75 - 14)) / P, 10);
    expect(plan.shift?.tape).toBeCloseTo(-0.23, 2);
    expect(plan.fittedAfterGrams).toBeCloseTo(60 + grams, 10);
    expect(plan.tapeInches).toBe(11); // two strips of 5.5 in
    expect(plan.inertiaChange! - massOf(plan)).toBeCloseTo((176.4 + grams * 7.75 ** 2) * 0.0064516, 8);
  });

  it('lower-hand tape of a grip shorter than where it starts: none', () => {
    const plan = planOne({ lowerLayers: 2 }, { lengthInches: 7.5 }, { settings: { lowerTapeStartInches: 8 } });
    expect(plan.tapeInches).toBe(0);
    expect(plan.fittedAfterGrams).toBe(60);
  });

  it('the two-way strip cancels, unless the shop fits without tape', () => {
    expect(planOne().shift?.twoWay).toBe(0);
    const dry = planOne({}, {}, { settings: { twoWayUnderNew: false } });
    expect(dry.shift?.twoWay).toBeCloseTo((STRIP * 8.75) / P, 10); // 1.8 g gone from 5.25 in
    expect(dry.twoWayInches).toBe(0);
    expect(dry.inertiaChange! - massOf(dry)).toBeCloseTo((176.4 - STRIP * 5.25 ** 2) * 0.0064516, 8);
    expect(dry.massAfterGrams).toBeCloseTo(420 + 10 - STRIP + (dry.remedy?.grams ?? NaN), 10);
  });

  it('from bare the strip counts, and not where the shop fits without tape', () => {
    const bare = { bareReading: 44, bareGrams: 368 };
    const dry = planOne(bare, {}, { settings: { twoWayUnderNew: false } });
    expect((planOne(bare).readingGripped ?? NaN) - (dry.readingGripped ?? NaN)).toBeCloseTo((STRIP * -8.75) / P, 10);
  });

  it('a putter’s grip takes longer tape: 15 in of layers and strip', () => {
    const plan = planOne({ kind: 'putter', layers: 2 }, { lengthInches: 15, balanceInches: 6 });
    const layer = 30 * 0.00064516 * 130;
    const strip = 30 * 0.00064516 * 133;
    expect(plan.shift?.tape).toBeCloseTo((2 * layer * -6.5) / P, 10);
    expect(plan.shift?.twoWay).toBeCloseTo((strip * -6.5 - STRIP * -8.75) / P, 10);
    expect(plan.tapeInches).toBe(30);
    expect(plan.twoWayInches).toBe(15);
  });

  it('a grip without length, balance point or spread takes the shop’s habits', () => {
    const plan = planOne(
      { layers: 1 },
      { lengthInches: undefined, balanceInches: undefined, capInches: undefined },
      {
        settings: { tapedInches: 9, capInches: 0.25 },
      },
    );
    expect(plan.tapeInches).toBe(9);
    expect(plan.shift?.grip).toBeCloseTo(-98 / P, 10); // 4.2 in
    expect(plan.lengthAfterInches).toBeCloseTo(37.125, 10);
    const byLength = planOne({}, { balanceInches: undefined, lengthInches: 10 });
    expect(byLength.shift?.grip).toBeCloseTo((60 * -10 + 50 * 9.8) / P, 10); // 4.0 in
  });

  it('a cap ⅛ in thicker on a 374 g body: +0.94 point, and the club is longer', () => {
    const plan = planOne({ massGrams: 374 + 50 + STRIP }, { capInches: 0.25 });
    expect(plan.shift?.cap).toBeCloseTo(46.75 / P, 10);
    expect(plan.shift?.cap).toBeCloseTo(0.94, 2);
    expect(plan.lengthAfterInches).toBe(37.125);
    expect(plan.remedy?.inches).toBe(37.125);
  });

  it('an extension of half an inch with a 6 g plug', () => {
    const plan = planOne({ lengthChangeInches: 0.5, plugGrams: 6 });
    const body = 420 - 50 - STRIP;
    expect(plan.shift?.length).toBeCloseTo((body * 0.5 - 6 * 13) / P, 10);
    expect(plan.lengthAfterInches).toBe(37.5);
    expect(plan.massAfterGrams).toBeCloseTo(436 + (plan.remedy?.grams ?? NaN), 10);
  });

  it('a trim of half an inch takes its piece away', () => {
    const plan = planOne({ lengthChangeInches: -0.5, plugGrams: -4 });
    const body = 420 - 50 - STRIP;
    expect(plan.shift?.length).toBeCloseTo((body * -0.5 + 4 * 13) / P, 10);
    expect(plan.lengthAfterInches).toBe(36.5);
  });

  it('a butt weight that leaves with its grip; one that stays moves nothing', () => {
    const leaves = planOne({ buttWeightGrams: 12, buttWeightLeaves: true });
    expect(leaves.shift?.buttWeight).toBeCloseTo((12 * 13) / P, 10); // +3.14 points
    expect(leaves.massAfterGrams).toBeCloseTo(420 - 12 + 10 + (leaves.remedy?.grams ?? NaN), 10);
    expect(leaves.inertiaChange! - massOf(leaves)).toBeCloseTo((176.4 - 12) * 0.0064516, 8); // 12 g at 1 in
    const stays = planOne({ buttWeightGrams: 12 });
    expect(stays.shift?.buttWeight).toBeCloseTo(0, 12);
    expect(stays.massAfterGrams).toBe(434.5);
  });

  it('all parts add up to the total', () => {
    const plan = planOne(
      {
        layers: 2,
        lowerLayers: 1,
        oldLayers: 1,
        buttWeightGrams: 8,
        buttWeightLeaves: true,
        lengthChangeInches: 0.5,
        plugGrams: 5,
      },
      { capInches: 0.2, lengthInches: 10 },
    );
    const { shift } = plan;
    if (!shift) throw new Error('everything is known');
    const parts = [shift.grip, shift.tape, shift.twoWay, shift.cap, shift.length, shift.buttWeight];
    expect(parts.every((part) => part !== 0)).toBe(true);
    expect(shift.total).toBeCloseTo(
      parts.reduce((sum, part) => sum + part),
      12,
    );
  });
});

describe('inertia where the body moves', () => {
  /** The body balances where its moment says: 4/D2 as arrived less grip and strip. */
  const body = 420 - 50 - STRIP;
  const moment = 124 * P - 50 * -9.8 - STRIP * -8.75; // D2 is 32 + 92 points above no moment
  const balance = 14 + moment / body;

  it('counts the body too', () => {
    const plan = planOne({ lengthChangeInches: 0.5 });
    const shifted = body * ((balance + 0.5) ** 2 - balance ** 2) * 0.0064516;
    expect(plan.inertiaChange! - massOf(plan)).toBeCloseTo(176.4 * 0.0064516 + shifted, 6);
  });

  it('takes a butt weight that leaves out of what the body carries', () => {
    const plan = planOne({ lengthChangeInches: 0.5, buttWeightGrams: 12, buttWeightLeaves: true, oldLayers: 1 });
    const light = body - 12 - LAYER;
    const where = 14 + (moment + 12 * 13 + LAYER * 8.75) / light;
    const shifted = light * ((where + 0.5) ** 2 - where ** 2) * 0.0064516;
    const rest = (60 * 4.2 ** 2 - 50 * 4.2 ** 2 - LAYER * 5.25 ** 2 - 12) * 0.0064516;
    expect(plan.inertiaChange! - massOf(plan)).toBeCloseTo(rest + shifted, 6);
  });

  it('from bare the body is where it was read, behind the old cap', () => {
    // not weighed as it arrived, so the catalogue's grip is what came off
    const plan = planOne({ massGrams: undefined, bareReading: 44, bareGrams: 368, lengthChangeInches: 0.5 });
    const where = 14 + (136 * P) / 368 + 0.125;
    const shifted = 368 * ((where + 0.5) ** 2 - where ** 2) * 0.0064516;
    expect(plan.inertiaChange! - massOf(plan)).toBeCloseTo(176.4 * 0.0064516 + shifted, 6);
  });

  it('is unknown where nobody knows where the body balances', () => {
    expect(planOne({ lengthChangeInches: 0.5, reading: undefined }).inertiaChange).toBeUndefined();
    expect(planOne({ lengthChangeInches: 0.5, massGrams: undefined }).inertiaChange).toBeUndefined();
    expect(planOne({ reading: undefined }).inertiaChange).toBeDefined(); // nothing moves, so nothing is needed
  });
});

describe('what is held', () => {
  it.each<[Partial<Club>, string]>([
    [{}, 'asArrived'],
    [{ kind: undefined }, 'asArrived'],
    [{ kind: 'wedge' }, 'asArrived'],
    [{ kind: 'putter' }, 'nothing'],
    [{ kind: 'junior' }, 'nothing'],
    [{ target: 34 }, 'target'],
    [{ kind: 'putter', target: 34 }, 'target'],
    [{ kind: 'putter', hold: 'asArrived' }, 'asArrived'],
    [{ hold: 'nothing', target: 34 }, 'nothing'],
    [{ hold: 'asArrived', target: 34 }, 'asArrived'],
  ])('%j holds %s', (club, hold) => {
    expect(holdOf(aClub(club))).toBe(hold);
    expect(planOne(club).hold).toBe(hold);
  });

  it('a target: the gap is what is missing to it', () => {
    const plan = planOne({ target: 34, kind: 'wedge' });
    expect(plan.heldReading).toBe(34);
    expect(plan.gapPoints).toBeCloseTo(34 - (32 - 98 / P), 10);
  });

  it('nothing: no gap, no weight, and the reading is still told', () => {
    const plan = planOne({ kind: 'putter' });
    expect(plan).toMatchObject({
      heldReading: undefined,
      gapPoints: undefined,
      remedy: undefined,
      verdict: 'notHeld',
      verdictAfter: 'notHeld',
    });
    expect(plan.readingAfter).toBeCloseTo(32 - 98 / P, 10);
    expect(plan.massAfterGrams).toBe(430);
  });

  it('as it was, with no reading: the change and its remedy still hold', () => {
    const plan = planOne({ reading: undefined });
    expect(plan.gapPoints).toBeCloseTo(98 / P, 10);
    expect(plan.remedy?.grams).toBe(4.5);
    expect(plan.verdict).toBe('out');
    expect(plan.readingGripped).toBeUndefined();
    expect(plan.readingAfter).toBeUndefined();
    expect(noteKinds(plan)).toEqual(['readingUnknown']);
  });

  it('a target, with no reading: nothing to compare', () => {
    const plan = planOne({ reading: undefined, target: 34 });
    expect(plan).toMatchObject({ gapPoints: undefined, verdict: 'unknown', remedy: undefined });
  });

  it('a target that is missing', () => {
    const plan = planOne({ hold: 'target' });
    expect(plan).toMatchObject({
      heldReading: undefined,
      gapPoints: undefined,
      verdict: 'unknown',
      verdictAfter: 'unknown',
    });
    expect(noteKinds(plan)).toEqual(['targetUnknown']);
    expect(noteKinds(planOne({ hold: 'target', target: 33 }))).toEqual([]);
  });

  it('bare and held as it was, but never read: nothing to hold it to', () => {
    const plan = planOne({ reading: undefined, bareReading: 44, bareGrams: 368 });
    expect(plan).toMatchObject({ gapPoints: undefined, verdict: 'unknown', shift: undefined });
    expect(plan.readingGripped).toBeDefined();
    expect(noteKinds(plan)).toEqual(['heldUnknown']);
    const target = planOne({ reading: undefined, bareReading: 44, bareGrams: 368, target: 34 });
    expect(noteKinds(target)).toEqual([]);
    expect(target.verdict).not.toBe('unknown');
  });

  it('a tolerance of its own goes before the shop’s', () => {
    expect(planOne({ tolerancePoints: 3 })).toMatchObject({ tolerancePoints: 3, verdict: 'within' });
    expect(planOne({}, {}, { settings: { tolerancePoints: 2.5 } })).toMatchObject({
      tolerancePoints: 2.5,
      verdict: 'likely',
    });
  });
});

describe('notes', () => {
  it('cells that could not be read come first', () => {
    const issue = { code: 'notNumber', field: 'Clubs row 2, Length (in)', got: 'long' } as const;
    const plan = planOne({ issues: [issue], reading: undefined });
    expect(plan.notes).toEqual([{ note: 'issue', issue }, { note: 'readingUnknown' }]);
  });

  it('mass unknown matters only where cap or length changes', () => {
    expect(noteKinds(planOne({ massGrams: undefined }))).toEqual([]);
    expect(noteKinds(planOne({ massGrams: undefined, lengthChangeInches: 0.5 }))).toEqual(['massUnknown']);
    expect(noteKinds(planOne({ massGrams: undefined }, { capInches: 0.25 }))).toEqual(['massUnknown']);
    expect(noteKinds(planOne({}, { capInches: 0.25 }))).toEqual([]);
  });

  it('a typical body is 374 g (practice)', () => {
    const plan = planOne({ massGrams: undefined, lengthChangeInches: 0.5 });
    expect(plan.shift?.length).toBeCloseTo(187 / P, 10);
    expect(plan.massAfterGrams).toBeUndefined();
  });

  it('a club that weighs less than its grip leaves is told, and reckoned as if not weighed', () => {
    const plan = planOne({ massGrams: 150, oldGripGrams: 200, lengthChangeInches: 0.5 });
    expect(noteKinds(plan)).toContain('massContradicts');
    expect(noteKinds(plan)).not.toContain('massUnknown');
    expect(plan.shift?.length).toBeCloseTo(187 / P, 10);
    expect(plan.massAfterGrams).toBeUndefined();
    expect(plan.massBeforeGrams).toBe(150);
  });

  it('the least body is 100 g (practice)', () => {
    const at = (body: number) => noteKinds(planOne({ massGrams: body + 50 + STRIP }));
    expect(at(100.001)).toEqual([]);
    expect(at(99.9)).toEqual(['massContradicts']);
  });

  it('a bare mass that leaves no grip is told, once', () => {
    const heavier = planOne({ bareGrams: 425 });
    expect(noteKinds(heavier)).toEqual(['massContradicts']);
    expect(heavier.fittedBeforeGrams).toBe(50); // back to what the row says
    const four = planOne({ bareReading: 44, bareGrams: 425 });
    expect(noteKinds(four)).toContain('bareContradicts');
    expect(noteKinds(four)).not.toContain('massContradicts');
    expect(noteKinds(planOne({ bareGrams: 425, massGrams: undefined }))).toEqual([]);
    const [twice] = planOf([aClub({ bareGrams: 425 }), aClub({ row: 2 })]).clubs;
    expect(twice && noteKinds(twice)).toEqual(['duplicateClub', 'massContradicts']); // another note does not hide it
  });

  it('what came off lies between 15 g and 220 g with twelve layers', () => {
    const off = (grams: number) => noteKinds(planOne({ bareGrams: 420 - STRIP - grams }));
    expect(off(15.001)).toEqual([]);
    expect(off(14.9)).toEqual(['massContradicts']);
    expect(off(220 + 12 * LAYER - 0.001)).toEqual([]);
    expect(off(220 + 12 * LAYER + 0.1)).toEqual(['massContradicts']);
  });

  it.each([
    [-0.04, false],
    [-0.05, true], // shown as −0.1
    [69.94, false],
    [69.95, true], // shown as 70
  ])('a reading of %d before: off the scale %s', (reading, off) => {
    const plan = planOne({ reading, kind: 'junior' }, { gripGrams: 50 });
    expect(noteOf(plan, 'offScale')).toEqual(off ? { note: 'offScale', points: reading } : undefined);
  });

  it('the finished reading is told before the one it came with', () => {
    const plan = planOne({ reading: -50, kind: 'junior' });
    expect(noteOf(plan, 'offScale')?.points).toBeCloseTo(-50 - 98 / P, 10);
    const back = planOne({ reading: -0.5, kind: 'junior' }, { gripGrams: 40 });
    expect(noteOf(back, 'offScale')?.points).toBe(-0.5); // +1.98 with the lighter grip
  });
});

describe('no grip to fit', () => {
  it('none chosen', () => {
    const plan = planOne({ newItem: undefined, layers: 3, lowerLayers: 1, tolerancePoints: 0.5 });
    expect(plan).toMatchObject({
      row: 1,
      name: '7 iron',
      item: undefined,
      grip: undefined,
      basis: undefined,
      layers: 3,
      layersSolved: false,
      lowerLayers: 1,
      hold: 'asArrived',
      heldReading: 32,
      tolerancePoints: 0.5,
      fittedBeforeGrams: 50,
      readingBefore: 32,
      readingAfter: undefined,
      verdict: 'unknown',
      verdictAfter: 'unknown',
      massBeforeGrams: 420,
      massAfterGrams: undefined,
      lengthAfterInches: 37,
      tapeInches: 0,
      twoWayInches: 0,
      breaches: [],
    });
    expect(plan.notes).toEqual([{ note: 'noGrip' }]);
  });

  it('an item nobody stocks', () => {
    const plan = planOne({ newItem: 'ghost', layers: undefined });
    expect(plan.item).toBe('ghost');
    expect(plan.layers).toBe(0);
    expect(plan.notes).toEqual([{ note: 'issue', issue: { code: 'unknownItem', field: 'New grip', got: 'ghost' } }]);
  });

  it('an item without a mass', () => {
    const plan = planOne({}, { gripGrams: undefined });
    expect(plan.grip).toBeUndefined();
    expect(plan.notes).toEqual([
      { note: 'issue', issue: { code: 'blank', field: 'Mass of G in Stock', expected: '15 to 220 g' } },
    ]);
  });

  it('still says what would be held', () => {
    expect(planOne({ newItem: undefined, target: 34 }).heldReading).toBe(34);
    expect(planOne({ newItem: undefined, kind: 'putter' })).toMatchObject({ hold: 'nothing', heldReading: undefined });
    expect(planOne({ newItem: undefined }).tolerancePoints).toBe(1);
    expect(planOne({ newItem: undefined, oldGripGrams: undefined }).fittedBeforeGrams).toBeUndefined();
  });
});

describe('rules', () => {
  it('are checked on the finished club', () => {
    expect(planOne({ lengthInches: 48 }, { capInches: 0.25 }).breaches).toEqual([{ rule: 'clubLong', inches: 48.125 }]);
    expect(planOne({ lengthInches: 48, kind: 'putter' }, { capInches: 0.25 }).breaches).toEqual([]);
    expect(planOne({ lengthInches: undefined }, { capInches: 0.25 })).toMatchObject({
      breaches: [],
      lengthAfterInches: undefined,
    });
    expect(planOne({ lengthInches: 46.5 }, {}, { settings: { competition46: true } }).breaches).toEqual([
      { rule: 'clubLong46', inches: 46.5 },
    ]);
    expect(planOne({}, { lengthInches: 6 }).breaches).toEqual([{ rule: 'gripLength', inches: 6 }]);
    expect(planOne({}, { upperInches: 1.8 }).breaches).toEqual([
      { rule: 'crossSection', inches: expect.closeTo(1.8, 9) },
    ]);
    const bulge = planOne({ lowerLayers: 9 }).breaches; // √(.82² − .36 + .69²) = .889 against .9
    expect(bulge).toEqual([]);
    expect(planOne({ lowerLayers: 12 }).breaches.map(({ rule }) => rule)).toEqual(['reverseTaper']);
  });
});
