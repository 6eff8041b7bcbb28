/**
 * The pages of one animal: registering it, what is known of it, a line in its diary, handing it over.
 *
 * <p>A form becomes the JSON that a program would send; the features read and refuse both alike.
 *
 * <p>May use: {@code animal}, {@code diary}, {@code share}, {@code visit}, {@code weight}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.animal;

import org.jspecify.annotations.NullMarked;
