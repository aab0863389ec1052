export function setup() {}
