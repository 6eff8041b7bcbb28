/**
 * The work list: what to do now and in which order, over all animals of an organisation.
 *
 * <p><b>Words.</b> The <em>entry</em> of an animal is one row with all that its two lists need. <em>Act now</em> is the
 * list by urgency, the <em>rounds</em> are the order that hygiene asks for; they contradict each other, so there are two.
 * <em>Due</em>: a task whose first good day has come; <em>overdue</em>: one whose last good day has passed. <em>Worse</em>:
 * the last look found something worse than the look before.
 *
 * <p><b>Always.</b> Every animal in care has one entry and no other has one. An entry is made again within the
 * transaction that changes what it is made of. It holds dates, never what is true on a day: nothing in it becomes false
 * by time passing alone, and what is due is said when somebody asks. Whoever is more urgent comes no later; an open task
 * is on the list until it is done. A list is read in the order of an index, a page at a time, and never counted.
 *
 * <p>What an entry is made of comes from an {@link varanid.intake.worklist.EntrySource}: from the records themselves.
 *
 * <p>May use: {@code account} (the zone), {@code animal}, {@code assessment}, {@code diary}, {@code weight},
 * {@code quarantine} (plans and the order of the rounds), {@code vet}, {@code platform.database}, {@code platform.time},
 * {@code platform.web}. None of these uses it.
 */
@NullMarked
package varanid.intake.worklist;

import org.jspecify.annotations.NullMarked;
