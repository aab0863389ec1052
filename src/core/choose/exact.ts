/** Sums of decimals without binary noise: whole numbers of a small part, added, and divided once. */

/** Steps of a scale of grams. */
export const PER_GRAM = 1000;
/** Readings are reckoned far finer than any scale shows. */
export const PER_POINT = 1e6;
/** Four decimals hold every currency's smallest unit and a tenth of it. */
export const PER_MONEY = 1e4;
export const PER_INCH = 1e6;

/** A number as whole parts. */
export function wholeParts(value: number, per: number): number {
  return Math.round(value * per);
}

/** Sum of numbers that each have few decimals. */
export function exactSum(values: readonly number[], per: number): number {
  return values.reduce((sum, value) => sum + wholeParts(value, per), 0) / per;
}

/** Price of so many grips together; undefined where one has none. */
export function priceOf(grips: readonly { readonly price?: number | undefined }[]): number | undefined {
  const prices = grips.map(({ price }) => price);
  return prices.every(isPrice) ? exactSum(prices, PER_MONEY) : undefined;
}

export function isPrice(price: number | undefined): price is number {
  return price !== undefined && Number.isFinite(price);
}
