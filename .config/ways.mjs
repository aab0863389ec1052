/**
 * Members by which a host takes text or formulas, and the few files that may give it some: text of a person's that starts like a formula is
 * made safe there. `assigned` to an object of Excel's, `called` on one (a path, or a name that stands for nothing else), or the `key` of what
 * the embedded spreadsheet is handed. A file that is named and does none of it fails a test.
 */
export const ways = [
  { may: ['excel/writeCells'], assigned: ['values', 'formulas'] },
  { may: ['excel/dress'], assigned: ['numberFormat', 'rule', 'prompt', 'errorAlert', 'centerFooter', 'rightFooter'] },
  { may: ['excel/dress', 'excel/change', 'excel/takeBack', 'excel/putBack', 'excel/asFound'], assigned: ['formula'] },
  { may: ['excel/change', 'excel/asFound'], called: ['tables.add'] },
  { may: ['excel/change'], called: ['worksheets.add'] },
  // With one argument it is a set of our own.
  { may: ['excel/change', 'excel/asFound'], called: ['names.add'], withArguments: '>1' },
  { may: ['excel/dress'], called: ['conditionalFormats.add', 'formats.add', 'setPrintTitleRows'] },
  {
    may: [],
    assigned: [
      ...['formulasLocal', 'formulasR1C1', 'valuesAsJson', 'valuesAsJsonLocal', 'numberFormatLocal', 'hyperlink'],
      ...['leftFooter', 'leftHeader', 'centerHeader', 'rightHeader', 'formula1', 'formula2', 'refersTo'],
    ],
    called: [
      ...['names.addFormulaLocal', 'comments.add', 'notes.add', 'setPrintTitleColumns', 'setCellProperties'],
      ...['rows.add', 'columns.add', 'copyFrom', 'autoFill'],
    ],
  },
  // A text's own takes two arguments.
  { may: [], called: ['replaceAll'], withArguments: '=3' },
  // What the embedded spreadsheet has for scripts that are no part of it.
  {
    may: [],
    called: [
      ...['setValue', 'setValues', 'setValueForCell', 'setFormula', 'setFormulas', 'setRichTextValueForCell'],
      ...['setRichTextValues', 'insertDefinedName', 'insertDefinedNameBuilder', 'setRef', 'setFormulaOrRefString'],
    ],
  },
  { may: ['embedded/snapshot', 'embedded/open/content'], key: ['f'] },
  { may: ['embedded/changes', 'embedded/open/complete'], key: ['formulaOrRefString'] },
  { may: ['embedded/dress', 'embedded/open/rules', 'embedded/save/rules'], key: ['formula1', 'formula2'] },
  {
    may: ['embedded/save/paper'],
    key: ['oddFooter', 'oddHeader', 'evenFooter', 'evenHeader', 'firstFooter', 'firstHeader'],
  },
];

/** Every file that may do some of it. */
export const exempt = [...new Set(ways.flatMap(({ may }) => may))];

/** What is restricted in a file, and everywhere when none is named. Each file that may do some of it is kept from all the rest. */
export function restricted(file) {
  return ways.filter(({ may }) => !may.includes(file)).flatMap(banned);
}

const SAFE = 'is where a host takes text or formulas: hand it a change of the port, or go through';

const oneOf = (names) => `/^(${names.join('|')})$/`;

/** Selectors that find one way, however its name is written. */
export function banned({ may, assigned = [], called = [], key = [], withArguments }) {
  const message = (name) => `${name} ${SAFE} ${may.length > 0 ? may.join(', ') : 'one of the ways that there are'}.`;
  const rule = (selector, names) => ({ selector, message: message(names.join(', ')) });
  // What is put into a map comes second.
  const inSet = "CallExpression[callee.property.name='set'] > ObjectExpression:first-child";
  const inAssign = "CallExpression[callee.property.name='assign'] > ObjectExpression";
  const kept = "[value.value=null][value.type='Literal']";
  return [
    ...(assigned.length > 0
      ? [
          rule(`AssignmentExpression${member(assigned)}`, assigned),
          rule(`:matches(${inSet}, ${inAssign}) > Property${named(assigned)}`, assigned),
        ]
      : []),
    ...called.map((name) => rule(callOf(name, withArguments), [name])),
    ...(key.length > 0
      ? [
          rule(`ObjectExpression > Property${named(key)}:not(${kept})`, key),
          rule(`AssignmentExpression${member(key)}`, key),
        ]
      : []),
  ];
}

function member(names) {
  const property = `:matches([left.property.name=${oneOf(names)}], [left.property.value=${oneOf(names)}])`;
  return `[left.type='MemberExpression']${property}`;
}

function named(names) {
  return `:matches([key.name=${oneOf(names)}], [key.value=${oneOf(names)}])`;
}

/** `names.add` is a call of `add` on whatever is called `names`, at the end of a path or by itself. */
function callOf(name, withArguments) {
  const [object, method] = name.includes('.') ? name.split('.') : [null, name];
  const on =
    object === null ? '' : `:matches([callee.object.name='${object}'], [callee.object.property.name='${object}'])`;
  const given = withArguments === undefined ? '' : `[arguments.length${withArguments}]`;
  const called = `:matches([callee.property.name='${method}'], [callee.property.value='${method}'])`;
  return `CallExpression${called}${given}${on}`;
}
