/** Tests of the demo: what it loads, and that removing it leaves everybody else alone. */
@NullMarked
package varanid.intake.demo;

import org.jspecify.annotations.NullMarked;
