/** The pages of animals, in a real browser. */
@org.jspecify.annotations.NullMarked
package varanid.intake.page.animal;
