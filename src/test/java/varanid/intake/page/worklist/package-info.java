/** The page that a morning begins with, without a browser and in one. */
@org.jspecify.annotations.NullMarked
package varanid.intake.page.worklist;
