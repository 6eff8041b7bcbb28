/**
 * Reads what the program brings as data: the files of {@code shared/reference}, and the patterns of their sentences.
 *
 * <p><b>Always.</b> A file that is missing or cannot be read, and a pattern that asks for what it is not given, fail
 * loudly: they are faults of the program.
 *
 * <p>May use: the JDK. How a file is turned into rules or words, each feature knows.
 */
@NullMarked
package varanid.intake.platform.reference;

import org.jspecify.annotations.NullMarked;
