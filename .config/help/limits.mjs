// Which functions belong together, and where each of them stops being true: what a doc comment has no room for.

const scale =
  'It reckons for the balance scale with its fulcrum at 14 in, and is as good as the masses and positions it is given: a grip’s mass that is 4 g off is 0.8 point off. See [how the maths works](help/balance.html).';
const size =
  'A size is an estimate: rubber keeps its volume (the low one) or every thousandth under the grip shows outside (the high one). A calliper on a grip of that model, fitted, beats both.';
const plan =
  'A plan cannot know what nobody measured: every row says whether its old grip was estimated, weighed or stripped, and how far the reading may be off. Above some 500 clubs let the pane write values instead.';
const money =
  'It reckons one line; a whole quote may be rounded otherwise, and which rounding and which tax are due differs by place. Ask your adviser.';

const limits = {
  TAPEGRAMS: ['Rolls differ by more than half. Weigh ten strips, divide by ten, and use that.'],
  GRIPMASS: [
    'Grips of one model scatter by about two grams, common practice without a source. The two-way strip, about 1.8 g, is not in it.',
  ],
  MASSPOINTS: [scale],
  BALANCECHANGE: [
    'It leaves out a thicker or thinner cap, which makes the club longer or shorter: LENGTHCHANGE counts that.',
    scale,
  ],
  LENGTHCHANGE: ['It says nothing of how a longer or shorter club plays.', scale],
  COMPENSATION: [
    'Weights come in steps, and every gram that is added is total mass, too. A negative result can seldom be carried out: weight cannot often be taken off a head.',
    scale,
  ],
  COUNTERWEIGHT: ['It changes the number on the scale, not the feel of the head and hardly the inertia.', scale],
  SWINGWEIGHT: ['Short and light clubs lie below A0, off the scale: the error then says by how many points.', scale],
  TOPOINTS: ['Letters run from A to G. A cell that holds 0 is taken for blank.'],
  TOREADING: ['Letters run from A to G: below A0 and from H on there is no reading.'],
  SHIFTREADING: ['Letters run from A to G: below A0 and from H on there is no reading.'],
  FITTEDREADING: [
    'It needs a club that was read without grip and tape. Tape is counted as if it ran 10.5 in from the cap.',
    scale,
  ],
  OUTSIDEDIAMETER: [
    'A grip on a butt thinner than its core would turn: that is refused, with the layers that fill it.',
    size,
  ],
  TAPELAYERS: ['It never takes fewer layers than fill the core, and never more than 12.', size],
  TARGETDIAMETER: [
    'Hand sizes have no standard; the usual guide is common practice without a source. It is where to start, and a sample grip in the hand decides. Pain in a hand or elbow is for a clinician.',
  ],
  INERTIACHANGE: ['It counts a mass as if it sat in one point, and says nothing about how a club swings.'],
  RULECHECK: [
    'It knows the few rules that numbers can tell: thickness and length of a grip, length of a club. It warns; a committee or the ruling body decides.',
  ],
  SETPLAN: [
    'The result fills many cells, so it cannot stand inside an Excel table, and needs room below and to the right.',
    plan,
  ],
  CLUBPLAN: [plan],
  PLACEGRIPS: [
    'At most 500 grips at a time. It looks at readings alone: which grip feels right is for a hand to say.',
    plan,
  ],
  LINETAX: [money],
  LINETOTAL: [money],
  SETMINUTES: [
    'Minutes are the shop’s own, from Rates and Weights. It knows no waiting: curing, errands and talk are not in it.',
  ],
};

/** Sentences for a function's page. */
export function limitsOf(id) {
  const found = limits[id];
  if (!found) throw new Error(`${id} has no limits in .config/help/limits.mjs: say where it stops being true.`);
  return found;
}

/** The functions by what they are about, for their list. */
export const groups = [
  [
    'Readings',
    ['MASSPOINTS', 'BALANCECHANGE', 'LENGTHCHANGE', 'COMPENSATION', 'COUNTERWEIGHT', 'FITTEDREADING', 'INERTIACHANGE'],
  ],
  ['The scale', ['SWINGWEIGHT', 'TOPOINTS', 'TOREADING', 'SHIFTREADING']],
  ['Grip, tape and size', ['TAPEGRAMS', 'GRIPMASS', 'OUTSIDEDIAMETER', 'TAPELAYERS', 'TARGETDIAMETER', 'RULECHECK']],
  ['Whole sets', ['SETPLAN', 'CLUBPLAN', 'PLACEGRIPS', 'SETMINUTES']],
  ['Money', ['LINETAX', 'LINETOTAL']],
];
