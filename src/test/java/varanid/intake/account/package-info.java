@NullMarked
package varanid.intake.account;

import org.jspecify.annotations.NullMarked;
