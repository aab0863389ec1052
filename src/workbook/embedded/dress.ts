/** What cells look like and what a person may pick in them: formats, drop-downs, highlights. */
import type {
  IObjectMatrixPrimitiveType,
  IRange,
  ISheetDataValidationRule,
  IStyleData,
  Worksheet,
} from '@univerjs/core';
import {
  BooleanNumber,
  BorderStyleTypes,
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from '@univerjs/core';
import { serializeListOptions } from '@univerjs/sheets';
import type { IConditionFormattingRule } from '@univerjs/sheets-conditional-formatting';
import {
  AddConditionalRuleMutation,
  CFRuleType,
  CFSubRuleType,
  ConditionalFormattingRuleModel,
  DeleteConditionalRuleMutation,
  DeleteConditionalRuleMutationUndoFactory,
} from '@univerjs/sheets-conditional-formatting';
import { getDataValidationDiffMutations, SheetDataValidationModel } from '@univerjs/sheets-data-validation';
import { AddDataValidationMutation, RemoveDataValidationMutation } from '@univerjs/data-validation';
import type { Block, CellFormat, Highlight, Look } from '../port';
import { columnLetters } from '../shared/address';
import type { Deed } from './journal';
import type { Spreadsheet } from './spreadsheet';
import { rangeOfBlock } from './tables';

const horizontal = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT };
const vertical = { top: VerticalAlign.TOP, center: VerticalAlign.MIDDLE, bottom: VerticalAlign.BOTTOM };

/** A cell format in the spreadsheet's terms. */
export function styleOf(format: CellFormat): IStyleData {
  const flag = (on: boolean): BooleanNumber => (on ? BooleanNumber.TRUE : BooleanNumber.FALSE);
  return {
    ...(format.number !== undefined && { n: { pattern: format.number } }),
    ...(format.bold !== undefined && { bl: flag(format.bold) }),
    ...(format.italic !== undefined && { it: flag(format.italic) }),
    ...(format.fill !== undefined && { bg: { rgb: format.fill } }),
    ...(format.ink !== undefined && { cl: { rgb: format.ink } }),
    ...(format.size !== undefined && { fs: format.size }),
    ...(format.wrap !== undefined && { tb: format.wrap ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW }),
    ...(format.align !== undefined && { ht: horizontal[format.align] }),
    ...(format.vertical !== undefined && { vt: vertical[format.vertical] }),
    ...(format.rule !== undefined && { bd: { b: { s: BorderStyleTypes.THIN, cl: { rgb: format.rule } } } }),
  };
}

/** What takes parts of a format off a cell again; a cell's other looks stay. */
export function styleWithout(looks: readonly Look[]): IStyleData {
  const parts = { number: 'n', bold: 'bl', italic: 'it', fill: 'bg', ink: 'cl', size: 'fs', wrap: 'tb', align: 'ht' };
  const all: Partial<Record<Look, string>> = { ...parts, vertical: 'vt', rule: 'bd' };
  return Object.fromEntries(looks.flatMap((look) => (all[look] ? [[all[look], null]] : [])));
}

/** One object in every cell of a block. */
export function everyCell<T>(at: Block, cell: T): IObjectMatrixPrimitiveType<T> {
  const matrix: IObjectMatrixPrimitiveType<T> = {};
  for (let row = at.row; row < at.row + at.rows; row++) {
    const line: Record<number, T> = {};
    for (let column = at.column; column < at.column + at.columns; column++) line[column] = cell;
    matrix[row] = line;
  }
  return matrix;
}

/** Fixed words, or the cells that hold them, as a reference without `=`. */
export type ChoicesSource = readonly string[] | { readonly reference: string };

/** The rule of a drop-down over a block. */
export function choicesRule(at: Block, source: ChoicesSource, hint: string): ISheetDataValidationRule {
  return {
    uid: generateRandomId(),
    type: DataValidationType.LIST,
    formula1: 'reference' in source ? `=${source.reference}` : serializeListOptions([...source]),
    ranges: [rangeOfBlock(at)],
    renderMode: DataValidationRenderMode.ARROW,
    allowBlank: true,
    showDropDown: true,
    // Another entry is marked and explained, never refused.
    errorStyle: DataValidationErrorStyle.WARNING,
    showErrorMessage: true,
    error: hint,
  };
}

/** A drop-down over a block. */
export function choicesOn(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  at: Block,
  source: ChoicesSource,
  hint: string,
): Deed[] {
  const rule = choicesRule(at, source, hint);
  const place = { unitId: spreadsheet.id, subUnitId: worksheet.getSheetId() };
  return [
    ...choicesOff(spreadsheet, worksheet, at),
    {
      steps: [{ id: AddDataValidationMutation.id, params: { ...place, rule } }],
      back: [{ id: RemoveDataValidationMutation.id, params: { ...place, ruleId: rule.uid } }],
    },
  ];
}

/** Takes whatever drop-downs there are off a block; those that reach beyond it keep the rest of their cells. */
export function choicesOff(spreadsheet: Spreadsheet, worksheet: Worksheet, at: Block): Deed[] {
  const sheetId = worksheet.getSheetId();
  const model = spreadsheet.injector.get(SheetDataValidationModel);
  const matrix = model.getRuleObjectMatrix(spreadsheet.id, sheetId).clone();
  matrix.removeRange([rangeOfBlock(at)]);
  const diffs = matrix.diff(model.getRules(spreadsheet.id, sheetId));
  const { redoMutations, undoMutations } = getDataValidationDiffMutations(
    spreadsheet.id,
    sheetId,
    diffs,
    spreadsheet.injector,
  );
  return redoMutations.length > 0 ? [{ steps: redoMutations, back: undoMutations }] : [];
}

/** Highlights over a block. */
export function highlightsOn(worksheet: Worksheet, at: Block, rules: readonly Highlight[]): Deed[] {
  const place = { unitId: worksheet.getUnitId(), subUnitId: worksheet.getSheetId() };
  return rules.map((highlight) => {
    const rule = highlightRule(at, highlight);
    return {
      steps: [{ id: AddConditionalRuleMutation.id, params: { ...place, rule } }],
      back: [{ id: DeleteConditionalRuleMutation.id, params: { ...place, cfId: rule.cfId } }],
    };
  });
}

/** How ids of highlights of ours begin. */
export const ourRule = 'regrip-';

function highlightRule(at: Block, highlight: Highlight): IConditionFormattingRule {
  const cell = `$${columnLetters(at.column + highlight.column)}${at.row + 1}`;
  const tests = highlight.equals.map((word) => `${cell}&""="${word.replaceAll('"', '""')}"`);
  return {
    cfId: `${ourRule}${generateRandomId()}`,
    ranges: [rangeOfBlock(at)],
    stopIfTrue: false,
    rule: {
      type: CFRuleType.highlightCell,
      subType: CFSubRuleType.formula,
      value: `=OR(${tests.join(',')})`,
      style: {
        bg: { rgb: highlight.fill },
        cl: { rgb: highlight.ink },
        ...(highlight.bold && { bl: BooleanNumber.TRUE }),
      },
    },
  };
}

/** Takes highlights of ours that touch a block away; a person's own stay. */
export function highlightsOff(spreadsheet: Spreadsheet, worksheet: Worksheet, at: Block): Deed[] {
  const place = { unitId: spreadsheet.id, subUnitId: worksheet.getSheetId() };
  const rules =
    spreadsheet.injector.get(ConditionalFormattingRuleModel).getSubunitRules(spreadsheet.id, place.subUnitId) ?? [];
  const stale = rules.filter((rule) => rule.cfId.startsWith(ourRule) && rule.ranges.some((range) => meets(range, at)));
  return stale.map(({ cfId }) => {
    const params = { ...place, cfId };
    const back = DeleteConditionalRuleMutationUndoFactory(spreadsheet.injector, params) as Deed['back'];
    return { steps: [{ id: DeleteConditionalRuleMutation.id, params }], back };
  });
}

function meets(range: IRange, at: Block): boolean {
  const other = rangeOfBlock(at);
  return (
    range.startRow <= other.endRow &&
    range.endRow >= other.startRow &&
    range.startColumn <= other.endColumn &&
    range.endColumn >= other.startColumn
  );
}
