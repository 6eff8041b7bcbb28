/**
 * Ids and row keys.
 *
 * <p>Ids are UUIDs of version 7 (RFC 9562), made here and not in the database, so that a reply can name the new thing
 * before it is stored and a list in id order is a list in order of making. Every row belongs to an organisation and is
 * keyed {@code (organisation_id, id)}: a repository that takes a {@link varanid.intake.platform.id.RowKey} cannot
 * forget whose row it reads.
 *
 * <p>May use: the JDK, the persistence annotations, {@code platform.time}.
 */
@NullMarked
package varanid.intake.platform.id;

import org.jspecify.annotations.NullMarked;
