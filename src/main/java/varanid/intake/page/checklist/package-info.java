/**
 * What is asked, and what each answer counts for: a whole checklist to read, for those who want to argue with it.
 *
 * <p><b>Always.</b> Every word and number comes from the checklist's file; the page leaves nothing of it out and adds
 * only the words between. Every question, rule and source has an address of its own.
 *
 * <p>May use: {@code checklist}, {@code scoring} (what a file says), {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.checklist;

import org.jspecify.annotations.NullMarked;
