/**
 * What every feature stands on and none of them owns: ids, time, the manners of HTTP, the database.
 *
 * <p>Nothing here knows a feature. A feature may use everything here that is public.
 */
@NullMarked
package varanid.intake.platform;

import org.jspecify.annotations.NullMarked;
