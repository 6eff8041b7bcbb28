/** Tests of the database start-up, and the database that other packages' tests run on: {@link OnTestDatabase}. */
@NullMarked
package varanid.intake.platform.database;

import org.jspecify.annotations.NullMarked;
