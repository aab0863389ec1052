import * as functions from './functions';

/** What a spreadsheet calls: cells in, a value or rows of values out, or a cell error thrown. */
export type WorksheetFunction = (...cells: never[]) => unknown;

/** The worksheet functions by ID, for the hosts to which Excel's own registration does not reach. */
export const FUNCTIONS: Readonly<Record<string, WorksheetFunction>> = {
  TAPEGRAMS: functions.tapeGrams,
  GRIPMASS: functions.gripMass,
  MASSPOINTS: functions.massPoints,
  BALANCECHANGE: functions.balanceChange,
  LENGTHCHANGE: functions.lengthChange,
  COMPENSATION: functions.compensation,
  COUNTERWEIGHT: functions.counterweight,
  SWINGWEIGHT: functions.swingWeight,
  TOPOINTS: functions.toPoints,
  TOREADING: functions.toReading,
  SHIFTREADING: functions.shiftReading,
  FITTEDREADING: functions.fittedReading,
  OUTSIDEDIAMETER: functions.outsideDiameter,
  TAPELAYERS: functions.tapeLayers,
  TARGETDIAMETER: functions.targetDiameter,
  INERTIACHANGE: functions.inertiaChange,
  RULECHECK: functions.ruleCheck,
  SETPLAN: functions.setPlan,
  CLUBPLAN: functions.clubPlan,
  PLACEGRIPS: functions.placeGrips,
  LINETAX: functions.lineTax,
  LINETOTAL: functions.lineTotal,
  SETMINUTES: functions.setMinutes,
};
