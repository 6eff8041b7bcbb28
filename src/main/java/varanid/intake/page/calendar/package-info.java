/**
 * The pages on which people make a calendar of what is due for their own calendar program, and close it.
 *
 * <p><b>Always.</b> The address of a calendar is a secret: it is shown once, when it is made.
 *
 * <p>May use: {@code animal}, {@code reminder}, {@code page}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.calendar;

import org.jspecify.annotations.NullMarked;
