/** The whole service, asked over HTTP on a real database: what the tests of every feature stand on. */
@NullMarked
package varanid.intake.service;

import org.jspecify.annotations.NullMarked;
