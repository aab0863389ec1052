import { readMetadata } from '../metadata.mjs';

/**
 * Ties each worksheet function to its ID while the script loads: Excel asks for them before the pane is up.
 * Without office.js there is nobody to tell, and the pane's own start says so.
 */
export default function associateLoader(source) {
  const { associations } = readMetadata(source, this.resourcePath);
  const calls = associations.map(
    ({ id, functionName }) => `  CustomFunctions.associate(${JSON.stringify(id)}, ${functionName});`,
  );
  return `${source}\nif (typeof CustomFunctions !== 'undefined') {\n${calls.join('\n')}\n}\n`;
}
