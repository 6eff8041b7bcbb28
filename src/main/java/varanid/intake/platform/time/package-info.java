/**
 * Time: the one clock of the service, and what counts as the future.
 *
 * <p>{@code occurredAt} is when something happened and comes from people; {@code recordedAt} is when the service stored
 * it and comes from the clock. Nothing reads the machine's clock except through the injected {@link java.time.Clock}.
 *
 * <p>May use: the JDK.
 */
@NullMarked
package varanid.intake.platform.time;

import org.jspecify.annotations.NullMarked;
