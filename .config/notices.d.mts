export interface PackageTold {
  name: string;
  version: string;
  licence: string | undefined;
  author: string | undefined;
  texts: string[];
}
export const allowedLicences: readonly string[];
export function packageFolder(file: string): string | undefined;
export function readPackage(folder: string): PackageTold;
export function isAllowed(licence: string | undefined): boolean;
export function faultsIn(packages: readonly PackageTold[]): string[];
export function noticesText(packages: readonly PackageTold[]): string;
