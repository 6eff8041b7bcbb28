@NullMarked
package varanid.intake.diary;

import org.jspecify.annotations.NullMarked;
