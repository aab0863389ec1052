/** Where a function's page stands in the site: Excel is told this address, and keeps it. */
export const functionPath = (id) => `help/functions/${id}.html`;
