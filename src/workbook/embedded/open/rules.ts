/** Drop-downs, checks of entries and highlights of a file, in the embedded spreadsheet's terms. */
import type { IRange, ISheetDataValidationRule } from '@univerjs/core';
import {
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
} from '@univerjs/core';
import { serializeListOptions } from '@univerjs/sheets';
import type {
  IConditionalFormattingRuleConfig,
  IConditionFormattingRule,
  IHighlightCell,
} from '@univerjs/sheets-conditional-formatting';
import {
  CFNumberOperator,
  CFRuleType,
  CFSubRuleType,
  CFTextOperator,
  CFValueType,
} from '@univerjs/sheets-conditional-formatting';
import { addressOf, blockOf } from '../../shared/address';
import { MOST_COLUMNS, MOST_ROWS } from '../../shared/limits';
import { ourRule } from '../dress';
import { rangeOfBlock } from '../tables';
import type { ConditionalRule, DataValidation } from './book';
import { styleOfHighlight } from './looks';

/** The areas of `A2:A9 C2:C9`, as far as the sheet goes. */
export function rangesOf(text: string, rows: number, columns: number): IRange[] {
  return text.split(/\s+/).flatMap((area) => {
    const block = blockOf(area, 'sheet');
    if (!block) return [];
    const whole = { rows: block.rows >= MOST_ROWS - block.row, columns: block.columns >= MOST_COLUMNS - block.column };
    return [
      rangeOfBlock({
        ...block,
        rows: whole.rows ? Math.max(1, rows - block.row) : block.rows,
        columns: whole.columns ? Math.max(1, columns - block.column) : block.columns,
      }),
    ];
  });
}

const TYPES: Record<DataValidation['type'], DataValidationType> = {
  list: DataValidationType.LIST,
  whole: DataValidationType.WHOLE,
  decimal: DataValidationType.DECIMAL,
  date: DataValidationType.DATE,
  time: DataValidationType.TIME,
  textLength: DataValidationType.TEXT_LENGTH,
  custom: DataValidationType.CUSTOM,
};
const STYLES = {
  stop: DataValidationErrorStyle.STOP,
  warning: DataValidationErrorStyle.WARNING,
  information: DataValidationErrorStyle.INFO,
} as const;

/** A check of entries, or a drop-down. */
export function checkRule(check: DataValidation, ranges: IRange[]): ISheetDataValidationRule {
  const list = check.type === 'list';
  const first =
    list && check.values
      ? serializeListOptions(check.values.map((value) => value.trim()))
      : limit(check, check.formula1);
  // Some programs write a second limit for a list, which has none: here it would be the colours of its entries.
  const second = list ? undefined : limit(check, check.formula2);
  return {
    uid: generateRandomId(),
    type: TYPES[check.type],
    ranges,
    allowBlank: check.allowBlank === true,
    showErrorMessage: check.showErrorMessage === true,
    showInputMessage: check.showInputMessage === true,
    errorStyle: STYLES[check.errorStyle ?? 'stop'],
    ...(first !== undefined && { formula1: first }),
    ...(second !== undefined && { formula2: second }),
    // Not named, it is this one (ECMA-376 Part 1, 18.3.1.32).
    ...(!list && check.type !== 'custom' && { operator: (check.operator ?? 'between') as DataValidationOperator }),
    ...(list && { showDropDown: true, renderMode: DataValidationRenderMode.ARROW }),
    ...(check.errorMessage !== undefined && { error: check.errorMessage }),
    ...(check.errorTitle !== undefined && { errorTitle: check.errorTitle }),
    ...(check.inputMessage !== undefined && { prompt: check.inputMessage }),
    ...(check.inputTitle !== undefined && { promptTitle: check.inputTitle }),
  };
}

/** A number as it is, a day or an expression as a formula. */
function limit({ type }: DataValidation, text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const isNumber = text.trim() !== '' && Number.isFinite(Number(text));
  return isNumber && type !== 'date' && type !== 'time' ? text.trim() : `=${text}`;
}

/** A highlight; null for a kind that is not shown here. */
export function highlightRule(rule: ConditionalRule, ranges: IRange[]): IConditionFormattingRule | null {
  const [first] = ranges;
  const config =
    first && configOf(rule, addressOf({ row: first.startRow, column: first.startColumn, rows: 1, columns: 1 }));
  if (!config) return null;
  const ours = rule.type === 'expression' && OURS.test(formulas(rule)[0] ?? '');
  return {
    cfId: `${ours ? ourRule : ''}${generateRandomId()}`,
    ranges,
    stopIfTrue: rule.stopIfTrue === true,
    rule: config,
  };
}

/** How the highlights begin that plans and pages of ours get (`dress.ts`), so that they are known again. */
const OURS = /^OR\(\$[A-Z]+\d+&""="/;

function formulas({ formula }: ConditionalRule): string[] {
  return [formula ?? []].flat();
}

const TEXTS: Partial<Record<ConditionalRule['type'], CFTextOperator>> = {
  containsText: CFTextOperator.containsText,
  notContainsText: CFTextOperator.notContainsText,
  beginsWith: CFTextOperator.beginsWith,
  endsWith: CFTextOperator.endsWith,
  containsBlanks: CFTextOperator.containsBlanks,
  notContainsBlanks: CFTextOperator.notContainsBlanks,
};

function configOf(rule: ConditionalRule, cell: string): IConditionalFormattingRuleConfig | null {
  const base = { type: CFRuleType.highlightCell as const, style: styleOfHighlight(rule.style ?? {}) };
  const [formula] = formulas(rule);
  const textOperator = TEXTS[rule.type];
  if (textOperator !== undefined)
    return {
      ...base,
      subType: CFSubRuleType.text,
      operator: textOperator,
      ...(rule.text !== undefined && { value: rule.text }),
    };
  switch (rule.type) {
    case 'expression':
      return formula === undefined ? null : { ...base, subType: CFSubRuleType.formula, value: `=${formula}` };
    case 'cellIs':
      return comparison(rule, base, cell);
    case 'duplicateValues':
      return { ...base, subType: CFSubRuleType.duplicateValues };
    case 'uniqueValues':
      return { ...base, subType: CFSubRuleType.uniqueValues };
    case 'colorScale':
      return colourScale(rule);
    case 'dataBar':
      return dataBar(rule);
    default:
      return null;
  }
}

const SIGNS: Partial<Record<NonNullable<ConditionalRule['operator']>, string>> = {
  equal: '=',
  notEqual: '<>',
  greaterThan: '>',
  lessThan: '<',
  greaterThanOrEqual: '>=',
  lessThanOrEqual: '<=',
};

type Base = Pick<IHighlightCell, 'type' | 'style'>;

function comparison(rule: ConditionalRule, base: Base, cell: string): IConditionalFormattingRuleConfig | null {
  const { operator } = rule;
  const limits = formulas(rule);
  const numbers = limits.map((text) => (text.trim() === '' ? NaN : Number(text)));
  const plain = numbers.length > 0 && numbers.every(Number.isFinite);
  const [one, other] = limits;
  if (operator === undefined || one === undefined) return null;
  if (operator === 'between' || operator === 'notBetween') {
    if (other === undefined) return null;
    const between = CFNumberOperator[operator];
    if (plain)
      return { ...base, subType: CFSubRuleType.number, operator: between, value: [numbers[0] ?? 0, numbers[1] ?? 0] };
    const inside = `AND(${cell}>=${one},${cell}<=${other})`;
    return {
      ...base,
      subType: CFSubRuleType.formula,
      value: operator === 'between' ? `=${inside}` : `=NOT(${inside})`,
    };
  }
  if (plain)
    return { ...base, subType: CFSubRuleType.number, operator: CFNumberOperator[operator], value: numbers[0] ?? 0 };
  return { ...base, subType: CFSubRuleType.formula, value: `=${cell}${SIGNS[operator] ?? '='}${one}` };
}

interface FileLimit {
  readonly type: string;
  readonly value?: string;
}

function limitOf({ type, value }: FileLimit): { type: CFValueType; value?: number | string } {
  const known: Record<string, CFValueType> = { ...CFValueType, autoMin: CFValueType.min, autoMax: CFValueType.max };
  const number = Number(value);
  return {
    type: known[type] ?? CFValueType.num,
    ...(value !== undefined && { value: Number.isFinite(number) ? number : `=${value}` }),
  };
}

function colourScale({ colorScale }: ConditionalRule): IConditionalFormattingRuleConfig | null {
  if (!colorScale) return null;
  return {
    type: CFRuleType.colorScale,
    config: colorScale.cfvo.map((value, index) => ({
      index,
      color: `#${(colorScale.colors[index] ?? '').slice(-6)}`,
      value: limitOf(value),
    })),
  };
}

function dataBar({ dataBar: bar }: ConditionalRule): IConditionalFormattingRuleConfig | null {
  const [min, max] = bar?.cfvo ?? [];
  if (!bar || !min || !max) return null;
  const colour = `#${bar.color.slice(-6)}`;
  return {
    type: CFRuleType.dataBar,
    isShowValue: true,
    config: { min: limitOf(min), max: limitOf(max), isGradient: true, positiveColor: colour, nativeColor: '#c00000' },
  };
}
