/**
 * Exact unit factors. The core works in inches, grams and points; money and minutes stay with those who use them.
 *
 * Source: NIST SP 811, appendix B: 1 in = 25.4 mm exactly; 1 oz (avoirdupois) = 28.349523125 g exactly;
 * standard gravity 9.80665 m/s² exactly.
 */

export const MM_PER_INCH = 25.4;
export const CM_PER_INCH = 2.54;
export const METRES_PER_INCH = 0.0254;
export const GRAMS_PER_OUNCE = 28.349523125;
export const STANDARD_GRAVITY = 9.80665;

/** Square inches in grams per square metre: 1 in² of 1 g/m² weighs this many grams (0.0254² m²). */
export const SQUARE_METRES_PER_SQUARE_INCH = METRES_PER_INCH * METRES_PER_INCH;

/** kg·cm² in one g·in²: 2.54² / 1000. */
export const KG_CM2_PER_G_IN2 = (CM_PER_INCH * CM_PER_INCH) / 1000;
