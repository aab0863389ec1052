/** The manifest for a site at `base`: the template's addresses start with `{base}`, its version is the package's with a fourth part. */
export function manifestXml(template, { base, version }) {
  return template.replaceAll('{base}', base).replaceAll('{version}', `${version}.0`);
}
