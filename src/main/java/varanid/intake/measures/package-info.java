/**
 * Measures: masses, lengths and temperatures in the units people use, and how finely they were read.
 *
 * <p>Unit codes are UCUM, case-sensitive. What was given is kept with its unit; what is computed with is exact decimals
 * in grams, millimetres and degrees Celsius. No value here rounds silently, and none can be negative where nature is
 * not.
 *
 * <p>Pure: the JDK only.
 */
@NullMarked
package varanid.intake.measures;

import org.jspecify.annotations.NullMarked;
