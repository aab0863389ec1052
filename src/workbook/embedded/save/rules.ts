/** Drop-downs and highlights of a sheet, in the terms of a workbook file. */
import type { IRange, ISheetDataValidationRule } from '@univerjs/core';
import { DataValidationType } from '@univerjs/core';
import { deserializeListOptions } from '@univerjs/sheets';
import type { IConditionFormattingRule } from '@univerjs/sheets-conditional-formatting';
import { CFRuleType, CFSubRuleType, ConditionalFormattingRuleModel } from '@univerjs/sheets-conditional-formatting';
import { SheetDataValidationModel } from '@univerjs/sheets-data-validation';
import type { ConditionalRule, DataValidation } from 'hucre/xlsx';
import { addressOf } from '../../shared/address';
import { withoutPlace } from '../open/withoutPlace';
import { openedFile, standsAsFiled, type AsFiled } from '../opened';
import type { Spreadsheet } from '../spreadsheet';
import { blockOfRange } from '../tables';
import { highlightLook } from './look';
import { plainFormula, type Namable } from './plainFormula';

/** What could be said in a file, and how many could not. */
export interface Said<T> {
  readonly said: T[];
  readonly leftOut: number;
}

/* What a file holds at most (ECMA-376 Part 1, 18.3.1.32: 255 characters of a list, 225 of a message). */
const LONGEST_LIST = 255;
const LONGEST_HINT = 225;

/** The sheet's drop-downs. */
export function dropDownsOf(spreadsheet: Spreadsheet, sheetId: string, known: Namable): Said<DataValidation> {
  const rules = spreadsheet.injector.get(SheetDataValidationModel).getRules(spreadsheet.id, sheetId);
  const file = openedFile(spreadsheet);
  return gather(
    rules
      .filter(({ ranges }) => ranges.length > 0)
      .map((rule) => asFiled(file?.checks.get(rule.uid), rule) ?? dropDown(rule, known)),
  );
}

/** A rule that came from a file and that nobody has changed is said as the file says it, wherever its cells are by now. */
function asFiled<T extends DataValidation | ConditionalRule>(
  kept: AsFiled<T> | undefined,
  rule: { readonly ranges: readonly IRange[] },
): T | null {
  if (!kept || kept.entered !== withoutPlace(rule) || rule.ranges.length === 0) return null;
  return { ...kept.file, range: rangesOf(rule.ranges) };
}

function dropDown(rule: ISheetDataValidationRule, known: Namable): DataValidation | null {
  const source = rule.type === DataValidationType.LIST && rule.formula1 ? sourceOf(rule.formula1, known) : null;
  if (source === null) return null;
  const errorMessage = rule.error?.slice(0, LONGEST_HINT);
  return {
    type: 'list',
    range: rangesOf(rule.ranges),
    formula1: source,
    allowBlank: true,
    // Another entry is asked about, never refused.
    errorStyle: 'warning',
    showErrorMessage: true,
    ...(errorMessage && { errorMessage }),
  };
}

function sourceOf(formula: string, known: Namable): string | null {
  if (formula.startsWith('=')) return plainFormula(formula, known);
  const words = deserializeListOptions(formula);
  const list = words.join(',');
  // The comma parts the words of a list in a file, and nothing can be put before one that does not.
  const fits = list.length <= LONGEST_LIST && !words.some((word) => word.includes(','));
  return fits ? `"${list.replaceAll('"', '""')}"` : null;
}

/** The sheet's highlights, the first one first: those that a formula decides, as all of ours are. */
export function highlightsOf(spreadsheet: Spreadsheet, sheetId: string, known: Namable): Said<ConditionalRule> {
  const rules = spreadsheet.injector.get(ConditionalFormattingRuleModel).getSubunitRules(spreadsheet.id, sheetId) ?? [];
  const file = openedFile(spreadsheet);
  const shown = rules.map((rule, index) => {
    const filed = asFiled(file?.highlights.get(rule.cfId), rule);
    return filed ? { ...filed, priority: index + 1 } : highlight(rule, index + 1, known);
  });
  // What nothing here shows cannot follow its cells, either.
  const unshown = file?.unshown.get(sheetId) ?? [];
  const inPlace = file !== null && standsAsFiled(spreadsheet, file);
  return gather([
    ...shown,
    ...unshown.map((rule, index) => (inPlace ? { ...rule, priority: rules.length + index + 1 } : null)),
  ]);
}

function highlight(rule: IConditionFormattingRule, priority: number, known: Namable): ConditionalRule | null {
  const { rule: what, ranges, stopIfTrue } = rule;
  if (what.type !== CFRuleType.highlightCell || what.subType !== CFSubRuleType.formula) return null;
  const formula = plainFormula(what.value, known);
  if (formula === null || ranges.length === 0) return null;
  return {
    type: 'expression',
    priority,
    formula,
    stopIfTrue,
    style: highlightLook(what.style),
    range: rangesOf(ranges),
  };
}

function rangesOf(ranges: readonly IRange[]): string {
  return ranges.map((range) => addressOf(blockOfRange('', range))).join(' ');
}

function gather<T>(rules: readonly (T | null)[]): Said<T> {
  const said = rules.filter((rule): rule is T => rule !== null);
  return { said, leftOut: rules.length - said.length };
}
