/** Tests of the data folder and of how a start that cannot succeed is told. */
@NullMarked
package varanid.intake.platform.start;

import org.jspecify.annotations.NullMarked;
