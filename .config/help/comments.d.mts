export interface Remarks {
  formula: string;
  source: string;
  sourceOf: string;
  more: string;
}
export interface FunctionComment {
  paragraphs: string[];
  remarks: Remarks;
  returns: string;
  errors: string;
  example: string;
}
export function readRemarks(text: string): Remarks;
export function readExample(
  name: string,
  text: string,
): { args: unknown[]; formula: string; gives: string | undefined };
export function readComments(sourceText: string): [string, FunctionComment][];
