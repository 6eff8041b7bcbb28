@NullMarked
package varanid.intake.platform.web;

import org.jspecify.annotations.NullMarked;
