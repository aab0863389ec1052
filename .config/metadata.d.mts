export interface Parameter {
  name: string;
  description?: string;
  type: string;
  optional?: boolean;
  dimensionality?: string;
}
export interface FunctionMetadata {
  id: string;
  name: string;
  description: string;
  helpUrl: string;
  parameters: Parameter[];
  result?: { type?: string; dimensionality?: string };
}
export interface Metadata {
  allowCustomDataForDataTypeAny: boolean;
  functions: FunctionMetadata[];
}
export interface SourceMetadata {
  metadata: Metadata;
  associations: { id: string; functionName: string }[];
}
export function readMetadata(sourceText: string, sourceName?: string): SourceMetadata;
export function readSource(): SourceMetadata;
export function metadataText(metadata: Metadata, base?: string): string;
