/**
 * The pages of rooms and of quarantine: which rooms there are, how their clocks stand and what they wait for, where an animal stands and whom
 * that delays, and what speaks for and against ending its quarantine.
 *
 * <p>A form becomes the JSON that a program would send; the features read and refuse both alike.
 *
 * <p><b>Always.</b> A form that is refused comes back with everything that was typed. What was sent twice is kept once.
 * Whom a move would delay is shown before it is recorded. No page ends a quarantine whose conditions are open.
 *
 * <p>May use: {@code animal}, {@code quarantine}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.room;

import org.jspecify.annotations.NullMarked;
