@NullMarked
package varanid.intake.report;

import org.jspecify.annotations.NullMarked;
